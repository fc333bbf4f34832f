package toothmark.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.capture.UnreadableCaptureException;

class ControllerLogReaderTest {

  @TempDir Path folder;

  private ControllerLog read(String text) throws IOException, UnreadableCaptureException {
    return ControllerLogReader.read(Files.writeString(folder.resolve("log.csv"), text));
  }

  private void reads(String text) throws Exception {
    ControllerLog log = read(text);

    assertThat(log.size()).isEqualTo(2);
    assertThat(log.time(1)).isEqualTo(37.45);
    assertThat(log.rpm(1)).isEqualTo(1016);
    assertThat(log.advance(1)).isEqualTo(13.2);
  }

  @Test
  void plainColumns() throws Exception {
    reads("Time,RPM,Load,Advance\n37.40,936,20,12.4\n37.45,1016,20,13.2\n");
  }

  @Test
  void unitsInBracketsAndOtherNames() throws Exception {
    reads(
        "Time (ms);Engine Speed [rev/min];Spark Advance (deg)\n37400;936;12,4\n37450;1016;13,2\n");
  }

  @Test
  void unitsInTheirOwnRowUnderAPreamble() throws Exception {
    reads(
        "recorded on a bench\n\nAdvance\tRPM\tTime\ndeg\trpm\tms\n12.4\t936\t37400\n13.2\t1016\t37450\n");
  }

  @Test
  void quotedHeadingsAndAByteOrderMark() throws Exception {
    reads(
        "\uFEFF\"Time\",\"rpm\",\"Ignition timing\"\r\n37.40,936,12.4\r\n37.45,1016,13.2\r\n\r\n");
  }

  @Test
  void aRowWrittenTwiceCountsOnce() throws Exception {
    reads("Time,RPM,Advance\n37.40,936,12.4\n37.40,936,12.4\n37.45,1016,13.2\n");
  }

  @Test
  void aMissingColumnIsNamed() {
    assertThatThrownBy(() -> read("Time,RPM\n37.40,936\n"))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "log.csv: no line among the first 50 names the columns Time, RPM and Advance of a"
                + " controller log; Advance is missing");
  }

  @Test
  void whereATableHoldsTheAdvanceTheLoadWillDo() throws Exception {
    ControllerLog log = read("Time,RPM,MAP (kPa)\n37.40,936,35\n37.45,1016,\n37.50,1100,45\n");

    assertThat(log.hasAdvance()).isFalse();
    assertThat(log.hasLoad()).isTrue();
    assertThat(log.loadAt(37.40)).hasValue(35);
    assertThat(log.loadAt(37.43)).as("beside a row without").isEmpty();
  }

  @Test
  void aBrokenValueIsPlaced() {
    assertThatThrownBy(() -> read("Time,RPM,Advance\n37.40,936,12.4\n37.45,fast,13.2\n"))
        .isInstanceOf(UnreadableCaptureException.class)
        .hasMessage(
            "log.csv, line 3, column 2 (RPM): \"fast\" is no number; remove the line or write the"
                + " number");
  }
}
