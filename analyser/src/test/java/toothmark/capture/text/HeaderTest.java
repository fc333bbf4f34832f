package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.understood;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names, units and preambles as recorders write them: common practice, one small file each. */
class HeaderTest {

  private static final String CH1 = "CH1 in V: every 1.0E-4 s from -0.001 s: 1.5 -2.25 3.0\n";

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Time (us),CH1 (mV)",
        "Time (x1E-6 s),CH1 (10^-3 V)",
        "Time [us],CH1 [mV]",
        "time(\u00b5s),CH1(mV)",
        "t/\u03bcs,CH1/mV",
        "Time_us,CH1_mV",
        "t in us,CH1 in mV",
        "Zeit (\u00b5s),CH1 (mV)",
        "Temps (µs),CH1 (mV)",
        "Tiempo (us),CH1 (mV)",
        "Tempo (usec),CH1 (mV)",
        "Tijd (microseconds),CH1 (millivolts)",
        "Zeit (Mikrosekunden),CH1 (Millivolt)",
        "X (US),CH1 (MV)",
        "Время (\u00b5s),CH1 (mV)"
      })
  void oneLineOfNamesAndUnits(String header) throws Exception {
    assertThat(understood(folder, header + "\n-1000,1500\n-900,-2250\n-800,3000\n")).isEqualTo(CH1);
  }

  @Test
  void unitsInTheirOwnRow() throws Exception {
    assertThat(understood(folder, "Time,CH1\n(us),(mV)\n\n-1000,1500\n-900,-2250\n-800,3000\n"))
        .isEqualTo(CH1);
  }

  @Test
  void unitsInTheirOwnRowWithoutBrackets() throws Exception {
    assertThat(understood(folder, "Time,CH1\nms,Volt\n-1.0,1.5\n-0.9,-2.25\n-0.8,3\n"))
        .isEqualTo(CH1);
  }

  @Test
  void unitsAboveTheNames() throws Exception {
    assertThat(understood(folder, "ms,V\nTime,CH1\n-1.0,1.5\n-0.9,-2.25\n-0.8,3\n")).isEqualTo(CH1);
  }

  @Test
  void unitsGluedToTheNumbers() throws Exception {
    assertThat(understood(folder, "Time,CH1\n-1.0ms,1.5V\n-900us,-2250mV\n-800 us,3.0 V\n"))
        .isEqualTo(CH1);
  }

  @Test
  void headerBehindACommentMark() throws Exception {
    assertThat(understood(folder, "# Time (ms),CH1 (V)\n-1.0,1.5\n-0.9,-2.25\n-0.8,3\n"))
        .isEqualTo(CH1);
  }

  /** The unit of time must not get lost: these are milliseconds. */
  @Test
  void manyColumnsBehindTheNames() throws Exception {
    assertThat(
            understood(
                folder, "Time (ms),CH1 (V)\n-1.0,1.5,0,0,0,\n-0.9,-2.25,0,1,0,\n-0.8,3,0,0,0,\n"))
        .startsWith(CH1)
        .doesNotContain("no unit");
  }

  @Test
  void countOfRowsInSpanish() throws Exception {
    assertThat(
            understood(
                folder, "Intervalo: 100 us\nInicio: -1 ms\nÍndice;CH1 (V)\n0;1,5\n1;-2,25\n2;3\n"))
        .isEqualTo(CH1);
  }

  @Test
  void noHeaderAndTheTimeBehindTheValue() throws Exception {
    assertThat(understood(folder, "1.5;-0.0010\n-2.25;-0.0009\n3;-0.0008\n"))
        .isEqualTo(
            """
            1: every 1.0E-4 s from -0.001 s: 1.5 -2.25 3.0
            ! the column of times has no unit; taken as seconds
            """);
  }

  @Test
  void noHeaderAtAll() throws Exception {
    assertThat(understood(folder, "-0.0010,1.5,0\n-0.0009,-2.25,1\n-0.0008,3,0\n"))
        .isEqualTo(
            """
            1: every 1.0E-4 s from -0.001 s: 1.5 -2.25 3.0
            2: every 1.0E-4 s from -0.001 s: 0.0 1.0 0.0
            ! the column of times has no unit; taken as seconds
            """);
  }

  @Test
  void moreColumnsThanNames() throws Exception {
    assertThat(understood(folder, "Time (ms),CH1 (V)\n0,1,10,20\n1,2,11,21\n2,3,12,22\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.0 2.0 3.0
            2: every 0.001 s from 0.0 s: 10.0 11.0 12.0
            3: every 0.001 s from 0.0 s: 20.0 21.0 22.0
            """);
  }

  @Test
  void namesThatAreAlike() throws Exception {
    assertThat(understood(folder, "Time (ms),CH (V),CH (V)\n0,1,10\n1,2,11\n2,3,12\n"))
        .isEqualTo(
            """
            CH in V: every 0.001 s from 0.0 s: 1.0 2.0 3.0
            CH (2) in V: every 0.001 s from 0.0 s: 10.0 11.0 12.0
            """);
  }

  @Test
  void commentsBeforeAndBetween() throws Exception {
    assertThat(
            understood(
                folder,
                "% bench, third try\n// second remark\nTime (ms),CH1 (V)\n-1.0,1.5\n"
                    + "# remark in between\n-0.9,-2.25\n-0.8,3\n"))
        .isEqualTo(CH1);
  }

  @Test
  void longPreamble() throws Exception {
    StringBuilder b = new StringBuilder();
    for (int i = 0; i < 3000; i++) {
      b.append("Remark ").append(i).append(",nothing of use\n");
    }
    b.append("Time (ms),CH1 (V)\n");
    b.append("-1.0,1.5\n-0.9,-2.25\n-0.8,3\n");
    for (int i = 3; i < 60; i++) {
      b.append((i - 10) / 10.0).append(",0\n");
    }
    assertThat(understood(folder, b.toString()))
        .startsWith("CH1 in V: every 1.0E-4 s from -0.001 s: 1.5 -2.25 3.0 0.0");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Interval,1.0E-04,s",
        "Sample Interval (ms),0.1",
        "Sampling interval: 100 us",
        "Note,bench,Sample Interval,0.1 ms,Coupling,DC",
        "Abtastintervall=0.1ms",
        "Increment,100,us",
        "dt = 1e-4 s",
        "Sample Rate,10000",
        "Sample rate: 10 kS/s",
        "Sampling frequency,10,kHz",
        "Fréquence d'échantillonnage: 10 kHz",
        "# Abtastrate: 10 kHz",
        "Frecuencia de muestreo,10000,Hz"
      })
  void intervalFromThePreamble(String line) throws Exception {
    assertThat(understood(folder, line + "\nStart,-1,ms\nCH1 (V),CH2 (V)\n1.5,0\n-2.25,1\n3,0\n"))
        .isEqualTo(CH1 + "CH2 in V: every 1.0E-4 s from -0.001 s: 0.0 1.0 0.0\n");
  }

  @Test
  void preambleWithDecimalComma() throws Exception {
    assertThat(
            understood(
                folder,
                "Abtastintervall;0,1;ms\nAnfang;-1,0;ms\nCH1 (V);CH2 (V)\n1,5;0\n-2,25;1\n3;0\n"))
        .isEqualTo(CH1 + "CH2 in V: every 1.0E-4 s from -0.001 s: 0.0 1.0 0.0\n");
  }

  @Test
  void settingsInTheColumnsOfTheHeader() throws Exception {
    assertThat(
            understood(
                folder,
                """
                X,CH1,Start,Increment,
                Sequence,Volt,-1.0E-03,1.0E-04
                0,1.5,,
                1,-2.25,,
                2,3,,
                """))
        .isEqualTo(CH1);
  }

  @Test
  void settingsBesideTheFirstRows() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Record Length,5,Points,-0.0010,1.5
                Sample Interval,0.0001,s,-0.0009,-2.25
                ,,,-0.0008,3
                ,,,-0.0007,4
                ,,,-0.0006,5
                """))
        .startsWith("1: every 1.0E-4 s from -0.001 s: 1.5 -2.25 3.0 4.0 5.0\n");
  }

  @Test
  void rawCountsWithScaleAndOffset() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Interval,0.1,ms
                Scale,0.5,0.25,V
                Offset,-1,0,V
                CH1 (counts),CH2 (counts)
                0,4
                3,8
                255,12
                """))
        .isEqualTo(
            """
            CH1 in V: every 1.0E-4 s from 0.0 s: -1.0 0.5 126.5
            CH2 in V: every 1.0E-4 s from 0.0 s: 1.0 2.0 3.0
            """);
  }

  @Test
  void probeFactorOfVoltsIsNotAppliedTwice() throws Exception {
    assertThat(understood(folder, "Probe,10X\nTime (ms),CH1 (V)\n-1.0,1.5\n-0.9,-2.25\n-0.8,3\n"))
        .isEqualTo(
            CH1 + "! line 1 states a probe factor of 10; the values are taken to include it\n");
  }

  @Test
  void unitsFromThePreamble() throws Exception {
    assertThat(
            understood(
                folder,
                "Horizontal Units,ms\nVertical Units,mV\nTime,CH1\n-1.0,1500\n-0.9,-2250\n-0.8,3000\n"))
        .isEqualTo(CH1);
  }

  @Test
  void numberOfPointsThatDoesNotMatch() throws Exception {
    assertThat(understood(folder, "Points,2500\nTime (ms),CH1 (V)\n-1.0,1.5\n-0.9,-2.25\n-0.8,3\n"))
        .isEqualTo(CH1 + "! line 1 states 2500 points, but there are 3 rows\n");
  }

  @Test
  void columnOfTextIsLeftOut() throws Exception {
    assertThat(
            understood(
                folder, "Time (ms),CH1 (V),note\n-1.0,1.5,cold\n-0.9,-2.25,cold\n-0.8,3,warm\n"))
        .isEqualTo(CH1 + "! column 3 (note) holds text and was left out\n");
  }

  @Test
  void textBehindTheLastRowIsLeftOut() throws Exception {
    assertThat(understood(folder, "Time (ms),CH1 (V)\n-1.0,1.5\n-0.9,-2.25\n-0.8,3\nEND OF DATA\n"))
        .isEqualTo(
            CH1
                + "! the text behind the last row was left out (line 5, column 1: 'END OF DATA' is"
                + " no number)\n");
  }

  @Test
  void unitsBehindABlank() throws Exception {
    assertThat(understood(folder, "Time ms,CH1 mV,CH2 V\n0,1500,1\n1,-2250,2\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.5 -2.25
            CH2 in V: every 0.001 s from 0.0 s: 1.0 2.0
            """);
  }

  @Test
  void emptyColumnsInFrontBetweenSemicolons() throws Exception {
    assertThat(understood(folder, ";;Time (ms);CH1 (V)\n;;0;1.5\n;;1;-2.25\n"))
        .isEqualTo("CH1 in V: every 0.001 s from 0.0 s: 1.5 -2.25\n");
  }

  @Test
  void minutes() throws Exception {
    assertThat(understood(folder, "Time,CH1\n[min],[V]\n0,1.5\n1,-2.25\n2,3\n"))
        .isEqualTo("CH1 in V: every 60.0 s from 0.0 s: 1.5 -2.25 3.0\n");
  }

  @Test
  void summaryBehindTheLastRow() throws Exception {
    assertThat(understood(folder, "Time (ms),CH1 (V)\n0,1.5\n1,-2.25\n2,3\n\nMax,3\nMin,-2.25\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.5 -2.25 3.0
            ! the text behind the last row was left out (line 6, column 1: 'Max' is no number)
            """);
  }

  @Test
  void spaceReservedBehindTheLastRow() throws Exception {
    assertThat(understood(folder, "Time (ms),CH1 (V)\n0,1.5\n1,-2.25\n2,3\n\0\0\0\0"))
        .startsWith("CH1 in V: every 0.001 s from 0.0 s: 1.5 -2.25 3.0\n");
  }
}
