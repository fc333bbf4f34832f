package toothmark.examination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.edges.EdgeDirection;
import toothmark.edges.SensorKind;
import toothmark.ignition.PickUp;
import toothmark.timing.PistonStop;
import toothmark.timing.StrobeWorksheet;
import toothmark.timing.TdcReadings;
import toothmark.wheel.WheelPattern;

class JobSheetReaderTest {

  private static final String FULL =
      """
      [job]
      shop = "Harbour Lane Garage"
      title = "Marlin 1600"
      [engine]
      cylinders = 4
      [engine.firing]
      order = [1, 3, 4, 2]
      [wheel]
      pattern = "36-1"
      tooth1_btdc_deg = 90.0
      sensor_circle_mm = 150
      [sensor]
      kind = "variable-reluctance"
      edge = "rising"
      [channels]
      crank = "CH1"
      tdc = "CH4"
      [[coils]]
      name = "coil 1"
      channel = "CH2"
      cylinders = [1, 4]
      signal = "primary-voltage"
      [[coils]]
      channel = "CH3"
      cylinders = [3, 2]
      [commanded]
      advance_deg = 10.0
      """;

  @Test
  void readsEveryKey() throws JobSheetException {
    JobSheet sheet = JobSheetReader.parse("job.toml", FULL);
    assertThat(sheet.heading().shop()).isEqualTo("Harbour Lane Garage");
    assertThat(sheet.engine().cylinders()).hasValue(4);
    assertThat(sheet.engine().firingOrder()).containsExactly(1, 3, 4, 2);
    assertThat(sheet.wheel().pattern()).contains(WheelPattern.of(36, 1));
    assertThat(sheet.wheel().tooth1BtdcDegrees()).hasValue(90.0);
    assertThat(sheet.wheel().sensorCircleMillimetres()).hasValue(150.0);
    assertThat(sheet.sensor().kind()).contains(SensorKind.VARIABLE_RELUCTANCE);
    assertThat(sheet.sensor().edge()).contains(EdgeDirection.RISING);
    assertThat(sheet.channels().tdc()).contains("CH4");
    assertThat(sheet.coils().get(0).coil().pickUp()).isEqualTo(PickUp.PRIMARY_VOLTAGE);
    assertThat(sheet.coils().get(1).coil().name()).isEqualTo("coil 2");
    assertThat(sheet.coils().get(1).coil().cylinders()).isEqualTo(List.of(3, 2));
    assertThat(sheet.commanded().advanceDegrees()).hasValue(10.0);
  }

  @Test
  void autoAndMissingMeanTheSame() throws JobSheetException {
    JobSheet sheet =
        JobSheetReader.parse(
            "job.toml", "[wheel]\npattern = \"auto\"\n[sensor]\nkind = \"auto\"\n");
    assertThat(sheet).isEqualTo(JobSheet.empty());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[wheel]\\npatern = \"36-1\""
            + "|job.toml, line 2: wheel.patern: unknown key; the nearest known key is wheel.pattern",
        "[wheels]\\npattern = \"36-1\""
            + "|job.toml, line 1: wheels: unknown key; the nearest known key is wheel",
        "[wheel]\\npattern = \"3x-1\""
            + "|job.toml, line 2: wheel.pattern: \"3x-1\" is not a wheel; write slots-missing, such as"
            + " 36-1, 60-2, 12+1 or 36-2-2-2",
        "[wheel]\\ntooth1_btdc_deg = \"90\""
            + "|job.toml, line 2: wheel.tooth1_btdc_deg: must be a number from -360 to 720, got 90",
        "[engine]\\ncylinders = 40"
            + "|job.toml, line 2: engine.cylinders: must be a number from 1 to 12, got 40",
        "[sensor]\\nedge = \"down\""
            + "|job.toml, line 2: sensor.edge: must be \"falling\", \"rising\" or \"auto\", got"
            + " \"down\"",
        "[[coils]]\\ncylinders = [1]"
            + "|job.toml, line 2: coils.channel: each coil needs the name of its channel",
        "[engine.firing]\\norder = [1, 3.4]"
            + "|job.toml, line 2: engine.firing.order: numbers cylinders, which are whole: [1.0, 3.4]",
        "[engine.firing]\\norder = [1, 3, 3, 2]"
            + "|job.toml, line 2: engine.firing.order: names a cylinder twice: [1, 3, 3, 2]",
        "[tdc]\\nstop_deg = [21]"
            + "|job.toml, line 2: tdc.stop_deg: touches come in pairs, before and after top dead"
            + " centre; got 1",
        "[tdc]\\nstop_deg = [21, 15]"
            + "|job.toml, line 2: tdc.stop_deg: tell where the pointer's zero lies, not where tooth 1"
            + " does; add tdc.tooth1_deg, what the pointer reads with tooth 1 at the sensor, or"
            + " tdc.light, readings with a timing light",
        "[tdc]\\nstop_deg = [-21, 15]\\ntooth1_deg = [90]"
            + "|job.toml, line 2: tdc.stop_deg: a piston stop needs one touch before and one after"
            + " top dead centre, got -21.0 degrees before and 15.0 degrees after",
        "[tdc]\\ntooth1_deg = [90]"
            + "|job.toml, line 2: tdc.tooth1_deg: says nothing without the touches of a piston stop;"
            + " add tdc.stop_deg = [21, 15]",
        "[tdc]\\nlight = \"gone.csv\""
            + "|job.toml, line 2: tdc.light: \"gone.csv\" cannot be read; write the name of light"
            + " readings (CSV), from the folder of the job sheet on",
        "[[coils]]\\nname = \"coil 2\"\\nchannel = \"a\"\\ncylinders = [1]\\n"
            + "[[coils]]\\nname = \" \"\\nchannel = \"b\"\\ncylinders = [2]"
            + "|job.toml, line 6: coils.name: two coils are called \"coil 2\"; give one another name",
        "[engine]\\ncylinders = 4\\n[[coils]]\\nchannel = \"B\"\\ncylinders = [5]"
            + "|job.toml, line 2: engine.firing: a coil fires cylinder 5 of 4, which the firing order"
            + " does not hold",
        "[channels]\\ncrank = \"A\"\\n[[coils]]\\nchannel = \"A\"\\ncylinders = [1]"
            + "|job.toml, line 4: coils.channel: \"A\" is named twice; each signal has a channel of"
            + " its own",
        "coils = 3"
            + "|job.toml, line 1: coils: must be a list of tables; write [[coils]] before each"
      })
  void complaintsNameLineKeyAndCure(String toml, String message) {
    assertThatThrownBy(() -> JobSheetReader.parse("job.toml", toml.replace("\\n", "\n")))
        .isInstanceOf(JobSheetException.class)
        .hasMessage(message);
  }

  @Test
  void readsWhatWasReadByHand(@TempDir Path folder) throws JobSheetException, IOException {
    Files.writeString(folder.resolve("light.csv"), "\ufeffspeed;commanded;seen\n1000;10;9,5\n");
    Path file = folder.resolve("job.toml");
    Files.writeString(
        file,
        "[tdc]\nstop_deg = [21, 15, 21.5, 15]\ntooth1_deg = [92.5]\nlight = \"light.csv\"\n"
            + "[wheel]\ntooth1_btdc_deg = 90\n");

    TdcReadings read = JobSheetReader.read(file).tdc();

    assertThat(read.stops())
        .containsExactly(new PistonStop(21, 15, 0.5), new PistonStop(21.5, 15, 0.5));
    assertThat(read.tooth1Degrees()).containsExactly(92.5);
    assertThat(read.light().orElseThrow().readings())
        .containsExactly(new StrobeWorksheet.Reading(1000, 9.5, 10));

    Files.writeString(folder.resolve("light.csv"), "speed,commanded,seen\n1000,10,ten\n");
    assertThatThrownBy(() -> JobSheetReader.read(file))
        .isInstanceOf(JobSheetException.class)
        .hasMessage("job.toml, line 4: tdc.light: light.csv, line 2 (seen): \"ten\" is no number");
  }

  @Test
  void lightReadingsNeedTheAngleThatTheControllerIsTold(@TempDir Path folder) throws IOException {
    Files.writeString(folder.resolve("light.csv"), "speed,commanded,seen\n1000,10,9.5\n");
    Path file = folder.resolve("job.toml");
    Files.writeString(file, "[tdc]\nlight = \"light.csv\"\n");
    assertThatThrownBy(() -> JobSheetReader.read(file))
        .isInstanceOf(JobSheetException.class)
        .hasMessageStartingWith("job.toml, line 2: tdc.light: ")
        .hasMessageEndingWith("add wheel.tooth1_btdc_deg, that angle");
  }

  @Test
  void brokenTomlNamesTheLine() {
    assertThatThrownBy(() -> JobSheetReader.parse("job.toml", "[wheel]\npattern = \n"))
        .isInstanceOf(JobSheetException.class)
        .hasMessageStartingWith("job.toml, line 2: ");
  }
}
