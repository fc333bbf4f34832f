package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.understood;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import toothmark.capture.Capture;
import toothmark.capture.CaptureReader;
import toothmark.capture.CaptureText;
import toothmark.capture.ReadingOptions;

/**
 * Ways of dividing rows and writing numbers, one small file each. Quotes, line ends and headers
 * follow RFC 4180 where it applies; the rest is common practice of recorders and spreadsheets.
 */
class DialectTest {

  private static final String TWO_CHANNELS =
      """
      CH1 in V: every 0.001 s from 0.0 s: 1.5 -2.25 3.0
      CH2 in V: every 0.001 s from 0.0 s: 0.0 0.5 4.75
      """;

  @TempDir Path folder;

  @Test
  void commaAndPoint() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s),CH1 (V),CH2 (V)
                0.000,1.50,0.00
                0.001,-2.25,0.50
                0.002,3.00,4.75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void commaAndBlank() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s), CH1 (V), CH2 (V)
                0.000, 1.50, 0.00
                0.001, -2.25, 0.50
                0.002, 3.00, 4.75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void semicolonAndDecimalComma() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Zeit (s);CH1 (V);CH2 (V)
                0,000;1,50;0,00
                0,001;-2,25;0,50
                0,002;3,00;4,75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void semicolonAndPoint() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s);CH1 (V);CH2 (V)
                0.000;1.50;0.00
                0.001;-2.25;0.50
                0.002;3.00;4.75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void tabAndPoint() throws Exception {
    assertThat(
            understood(
                folder,
                "Time (s)\tCH1 (V)\tCH2 (V)\n0.000\t1.50\t0.00\n0.001\t-2.25\t0.50\n"
                    + "0.002\t3.00\t4.75\n"))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void tabAndDecimalComma() throws Exception {
    assertThat(
            understood(
                folder,
                "Temps (s)\tCH1 (V)\tCH2 (V)\n0,000\t1,50\t0,00\n0,001\t-2,25\t0,50\n"
                    + "0,002\t3,00\t4,75\n"))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void columnsOfBlanks() throws Exception {
    assertThat(
            understood(
                folder,
                """
                  Time/s    CH1/V   CH2/V
                   0.000     1.50    0.00
                   0.001    -2.25    0.50
                   0.002     3.00    4.75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void columnsOfBlanksWithDecimalComma() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Zeit/s CH1/V CH2/V
                0,000 1,50 0,00
                0,001 -2,25 0,50
                0,002 3,00 4,75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void verticalBars() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s)|CH1 (V)|CH2 (V)
                0.000|1.50|0.00
                0.001|-2.25|0.50
                0.002|3.00|4.75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  /** RFC 4180, 2.5: fields may be enclosed in double quotes. */
  @Test
  void everythingInQuotes() throws Exception {
    assertThat(
            understood(
                folder,
                """
                "Time (s)","CH1 (V)","CH2 (V)"
                "0.000","1.50","0.00"
                "0.001","-2.25","0.50"
                "0.002","3.00","4.75"
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  /** RFC 4180, 2.6: a field that holds commas is enclosed in double quotes. */
  @Test
  void decimalCommaInQuotesBetweenCommas() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s),CH1 (V),CH2 (V)
                "0,000","1,50","0,00"
                "0,001","-2,25","0,50"
                "0,002","3,00","4,75"
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  /** RFC 4180, 2.7: a double quote inside a field is written twice. */
  @Test
  void quoteInsideAName() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s),"the ""crank"", left (V)"
                0.000,1.5
                0.001,2.5
                """))
        .isEqualTo("the \"crank\", left in V: every 0.001 s from 0.0 s: 1.5 2.5\n");
  }

  /** RFC 4180, 2.1 and 2.2: lines end in CR LF; the last one may have no end. */
  @Test
  void carriageReturnLineFeed() throws Exception {
    assertThat(
            understood(
                folder,
                "Time (s),CH1 (V),CH2 (V)\r\n0.000,1.50,0.00\r\n0.001,-2.25,0.50\r\n"
                    + "0.002,3.00,4.75"))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void carriageReturnOnly() throws Exception {
    assertThat(
            understood(
                folder,
                "Time (s),CH1 (V),CH2 (V)\r0.000,1.50,0.00\r0.001,-2.25,0.50\r0.002,3.00,4.75\r"))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void trailingDelimiter() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s),CH1 (V),CH2 (V),
                0.000,1.50,0.00,
                0.001,-2.25,0.50,
                0.002,3.00,4.75,
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void blankLinesBetweenRows() throws Exception {
    assertThat(
            understood(
                folder,
                "Time (s),CH1 (V),CH2 (V)\n\n0,1.5,0\n\n0.001,-2.25,0.5\n\n0.002,3,4.75\n\n"))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void exponents() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s),CH1 (V),CH2 (V)
                0.0000E+00,1.5e0,0E0
                1.0000E-03,-2.25E+00,5e-1
                2.0000E-03,.3e1,475.E-2
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void plusSignsAndTypographicMinus() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (s),CH1 (V),CH2 (V)
                +0.000,+1.50,0.00
                +0.001,\u22122.25,+0.50
                +0.002,+3.00,+4.75
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void thousandsMarks() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (us);CH1 (mV);CH2 (mV)
                0;1.500,0;0,0
                1.000;-2.250,0;500,0
                2.000;3.000,0;4.750,0
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void thousandsMarksInQuotes() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Time (us),CH1 (mV),CH2 (mV)
                0,"1,500.0",0.0
                "1,000","-2,250.0",500.0
                "2,000","3,000.0","4,750.0"
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void thousandsInThinBlanks() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Temps (us);CH1 (mV);CH2 (mV)
                0;1\u202f500,0;0,0
                1\u202f000;-2\u202f250,0;500,0
                2\u202f000;3\u202f000,0;4\u202f750,0
                """))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void utf8WithByteOrderMark() throws Exception {
    assertThat(
            understood(
                folder, "\ufeffTime (s),CH1 (V),CH2 (V)\n0,1.5,0\n0.001,-2.25,0.5\n0.002,3,4.75\n"))
        .isEqualTo(TWO_CHANNELS);
  }

  @Test
  void utf16InAllForms() throws Exception {
    String text = "Time (µs),CH1 (V),CH2 (V)\n0,1.5,0\n1000,-2.25,0.5\n2000,3,4.75\n";
    for (String mark : new String[] {"", "\ufeff"}) {
      for (var charset :
          new java.nio.charset.Charset[] {StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE}) {
        assertThat(understood(folder, mark + text, charset, ReadingOptions.withDefaults()))
            .as(charset + (mark.isEmpty() ? "" : " with mark"))
            .isEqualTo(TWO_CHANNELS);
      }
    }
  }

  @Test
  void latin1() throws Exception {
    assertThat(
            understood(
                folder,
                "Zeit (µs);Kurbelwelle größer (V)\n0;1,5\n1000;-2,25\n",
                StandardCharsets.ISO_8859_1,
                ReadingOptions.withDefaults()))
        .isEqualTo("Kurbelwelle größer in V: every 0.001 s from 0.0 s: 1.5 -2.25\n");
  }

  @Test
  void readingSaysWhatWasFound() throws Exception {
    Path file =
        Files.writeString(
            folder.resolve("a.csv"), "# made by hand\nt;A\n(ms);(mV)\n-1,0;5\n0,0;6\n1,0;7\n");
    try (Capture capture = CaptureReader.read(file, ReadingOptions.withDefaults())) {
      assertThat(capture.file()).isEqualTo("a.csv");
      assertThat(capture.reading().format()).isEqualTo("delimited text, semicolon, decimal comma");
      assertThat(CaptureText.fact(capture, "encoding")).isEqualTo("ASCII");
      assertThat(CaptureText.fact(capture, "header"))
          .isEqualTo("2 lines above the rows, from line 2");
      assertThat(CaptureText.fact(capture, "rows of numbers")).isEqualTo("from line 4");
      assertThat(CaptureText.fact(capture, "columns")).isEqualTo("t in ms (time); A in mV");
      assertThat(CaptureText.fact(capture, "sampling interval"))
          .isEqualTo("1 ms (1 kHz), from the column of times");
    }
  }
}
