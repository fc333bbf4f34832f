package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.capture.UnreadableCaptureException;

class TextTableTest {

  @TempDir Path folder;

  private TextTable read(String text) throws Exception {
    return TextTable.read(Files.writeString(folder.resolve("log.csv"), text));
  }

  @Test
  void aLog() throws Exception {
    TextTable t =
        read(
            """
            "controller log"
            Time;RPM (rpm);Load (kPa);Advance (°);note
            ms;;;;
            0;850;40,5;10,0;idle

            100;;41,0;10,5;idle
            250;900;41,5;;up
            """);
    assertThat(t.columns()).isEqualTo(5);
    assertThat(t.rows()).isEqualTo(3);
    assertThat(t.name(0)).isEqualTo("Time");
    assertThat(t.unit(0)).isEqualTo("s");
    assertThat(t.name(1)).isEqualTo("RPM");
    assertThat(t.unit(1)).isEqualTo("rpm");
    assertThat(t.unit(2)).isEqualTo("kPa");
    assertThat(t.unit(3)).isEqualTo("°");
    assertThat(t.value(2, 0)).hasValue(0.25);
    assertThat(t.value(0, 1)).hasValue(850);
    assertThat(t.value(1, 1)).isEmpty();
    assertThat(t.value(1, 3)).hasValue(10.5);
    assertThat(t.value(2, 3)).isEmpty();
    assertThat(t.value(0, 4)).isEmpty();
    assertThat(t.line(0)).isEqualTo(4);
    assertThat(t.line(1)).isEqualTo(6);
    assertThat(t.line(2)).isEqualTo(7);
  }

  @Test
  void timesThatRepeatAreKeptAsTheyAre() throws Exception {
    TextTable t = read("time,rpm,advance\n0.0,900,10\n0.0,905,11\n0.1,910,12\n0.1,920,12\n");
    assertThat(t.rows()).isEqualTo(4);
    assertThat(t.value(1, 0)).hasValue(0);
    assertThat(t.value(1, 1)).hasValue(905);
  }

  @Test
  void aWordBetweenTheNumbers() {
    assertThatThrownBy(() -> read("time,rpm\n0,900\n1,905\n2,stall\n3,910\n4,911\n"))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage("log.csv: line 4, column 2: 'stall' is no number; mend or remove the line");
  }
}
