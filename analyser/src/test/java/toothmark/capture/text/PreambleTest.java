package toothmark.capture.text;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.understood;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Settings wherever recorders put them; none may be passed over where it changes a number. */
class PreambleTest {

  @TempDir Path folder;

  @Test
  void betweenCommasAboveASingleColumn() throws Exception {
    assertThat(understood(folder, "# clock,2000000,Hz\ntooth period (counts)\n1000\n1002\n2000\n"))
        .isEqualTo("1: instants 0.0 5.0E-4 0.001001 0.002001, step 5.0E-7\n");
  }

  /** 0.04 V a count, not the 2 V of a division; a probe of 10; (133 - 128) * 0.04 * 10 = 2. */
  @Test
  void scaleOfTheScreenIsNotThatOfTheCounts() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Sample Interval,0.001,s
                Vertical Scale,2.0
                Vertical Offset,3.0
                Probe Atten,10
                Y Increment,0.04
                Y Origin,0
                Y Reference,128
                Bandwidth Limit,20
                """
                    + "128\n133\n123\n".repeat(4)))
        .isEqualTo(
            "1 in V: every 0.001 s from 0.0 s:"
                + " 0.0 2.0 -2.0".repeat(4)
                + "\n! the probe factor of 10 in line 4 was applied to channel 1; if the scale in"
                + " line 5 holds it already, its values are that much too high: state the scale in"
                + " [[capture.columns]] of the job sheet\n");
  }

  /** 100 counts of each: 100 * 0.01 V and 100 * 0.05 V. */
  @Test
  void eachChannelItsOwnScaleOnALineOfItsOwn() throws Exception {
    assertThat(
            understood(
                folder,
                "rate: 1000 Hz\nCH1 Scale: 0.01\nCH2 Scale: 0.05\nCH1,CH2\n0,0\n100,100\n0,200\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 0.0 1.0 0.0
            CH2 in V: every 0.001 s from 0.0 s: 0.0 5.0 10.0
            """);
  }

  /** Whole numbers do not show the mark of decimals; 2.5 mV a count, 400 * 2.5 mV = 1 V. */
  @Test
  void decimalCommasAboveWholeNumbers() throws Exception {
    assertThat(
            understood(
                folder,
                "Startzeit;-0,18;s\nAbtastintervall;0,5;ms\nEinheit;mV\nSkalierung;2,5\n\n"
                    + "Kanal A\n0\n400\n-200\n"))
        .isEqualTo("Kanal A in V: every 5.0E-4 s from -0.18 s: 0.0 1.0 -0.5\n");
  }

  @Test
  void rateInFrench() throws Exception {
    assertThat(
            understood(
                folder, "Fréquence d'échantillonnage : 20 kéch/s\nSignal (V)\n0,5\n1,25\n-0,5\n"))
        .isEqualTo("Signal in V: every 5.0E-5 s from 0.0 s: 0.5 1.25 -0.5\n");
  }

  @Test
  void severalOnOneLine() throws Exception {
    assertThat(
            understood(
                folder, "dt=1e-3 s, scale=0.001 V/count, offset=-5 V\nch1\n5000\n5141\n4000\n"))
        .isEqualTo("ch1 in V: every 0.001 s from 0.0 s: 0.0 0.14100000000000001 -1.0\n");
  }

  @Test
  void besideTheNamesOnTheHeaderLine() throws Exception {
    assertThat(
            understood(
                folder,
                """
                CH1(V),CH2(V),t0 = -0.002000s,tInc = 1.000000e-03s
                1.5,0.0
                -2.25,0.5
                3.0,4.75
                """))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from -0.002 s: 1.5 -2.25 3.0
            CH2 in V: every 0.001 s from -0.002 s: 0.0 0.5 4.75
            """);
  }

  @Test
  void remarksBetweenTheNameAndTheRows() throws Exception {
    assertThat(
            understood(
                folder, "raw adc\n# rate 1000 Hz\n# scale 0.001 V\n0\n141\n-282\n423\n1000\n"))
        .isEqualTo(
            "raw adc in V: every 0.001 s from 0.0 s: 0.0 0.14100000000000001 -0.28200000000000003 0.423 1.0\n");
    assertThat(understood(folder, "period\n# counter clock 16 MHz\n16000\n16032\n32000\n"))
        .isEqualTo("1: instants 0.0 0.001 0.002002 0.004002, step 6.25E-8\n");
  }

  @Test
  void clockThatCanOnlyBeTheOneOfTheSamples() throws Exception {
    assertThat(understood(folder, "#CLOCK=1.0kHz\n#SIZE=3\n#UNITS:V\nCH1;CH2\n1.5;0.5\n2.5;1.5\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.5 2.5
            CH2 in V: every 0.001 s from 0.0 s: 0.5 1.5
            """);
  }

  @Test
  void clockBehindAPrescaler() throws Exception {
    assertThat(understood(folder, "# prescaler 8, clock 16 MHz\nperiod_counts\n1000\n1002\n2000\n"))
        .isEqualTo("1: instants 0.0 5.0E-4 0.001001 0.002001, step 5.0E-7\n");
  }

  @Test
  void countsWithoutTheWordPeriod() throws Exception {
    assertThat(understood(folder, "# timer clock: 2 MHz\nticks\n1002\n1000\n2000\n"))
        .isEqualTo("1: instants 0.0 5.01E-4 0.001001 0.002001, step 5.0E-7\n");
  }

  /** IEEE 488.2 recorders commonly state value = (count - reference) · increment + origin. */
  @Test
  void countsAboveAReferenceLevel() throws Exception {
    assertThat(
            understood(
                folder,
                """
                Points,3
                X Increment,1e-03
                X Origin,-0.002
                Y Increment,0.5
                Y Origin,0.25
                Y Reference,128
                CH1
                128
                130
                120
                """))
        .isEqualTo("CH1 in V: every 0.001 s from -0.002 s: 0.25 1.25 -3.75\n");
  }

  /** 5 mV a count, or 200 counts a volt: 100 counts are 0.5 V, -200 are -1 V. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Counts per Volt: 200",
        "LSB/V,200",
        "ADC codes per volt 200",
        "Scale: 200 counts/V",
        "scale (counts/V): 200",
        "Gain,200,counts/V",
        "Counts per mV: 0.2",
        "1 V = 200 counts",
        "V per count: 0.005",
        "mV/LSB: 5",
        "uV per code,5000",
        "Resolution: 5 mV/bit",
        "Conversion factor (V/count): 0.005",
        "1 LSB = 5 mV",
        "LSB size: 5 mV"
      })
  void whatACountIsWorth(String line) throws Exception {
    assertThat(understood(folder, "rate: 1000 Hz\n" + line + "\nCH1\n0\n100\n-200\n300\n"))
        .isEqualTo("CH1 in V: every 0.001 s from 0.0 s: 0.0 0.5 -1.0 1.5\n");
  }

  /** 100 counts of each: 100 * 0.01 V and 100 * 0.05 V. */
  @ParameterizedTest
  @CsvSource({
    "'Channel 1 Scale: 0.01','Channel 2 Scale: 0.05'",
    "'Scale Ch1,0.01','Scale Ch2,0.05'",
    "'Scale (CH1),0.01','Scale (CH2),0.05'",
    "'Scale[1]=0.01','Scale[2]=0.05'",
    "'Y Mult CH1 0.01','Y Mult CH2 0.05'",
    "'CH1,Scale,0.01','CH2,Scale,0.05'",
    "'V/count CH1: 0.01','V/count CH2: 0.05'",
    "'[CH1]\nscale=0.01','[CH2]\nscale=0.05'"
  })
  void whoseAScaleIs(String one, String two) throws Exception {
    String head = "rate: 1000 Hz\n" + one + "\n" + two + "\n";
    assertThat(understood(folder, head.replace("\\n", "\n") + "CH1,CH2\n0,0\n100,100\n0,200\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 0.0 1.0 0.0
            CH2 in V: every 0.001 s from 0.0 s: 0.0 5.0 10.0
            """);
  }

  /** (100 * 0.01 + 1.5) V and (100 * 0.01 - 2) V. */
  @Test
  void whoseAnOffsetIs() throws Exception {
    assertThat(
            understood(
                folder,
                "rate: 1000 Hz\nScale,0.01\nChannel 1 Offset,1.5 V\nOffset Ch2: -2 V\n"
                    + "CH1,CH2\n0,0\n100,100\n0,200\n"))
        .isEqualTo(
            """
            CH1 in V: every 0.001 s from 0.0 s: 1.5 2.5 1.5
            CH2 in V: every 0.001 s from 0.0 s: -2.0 -1.0 0.0
            """);
  }

  /** Volts a division of a screen, and another channel's scale, say nothing of the counts. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Vertical Scale Ch1,2 V",
        "Volts/Div CH1,2",
        "Channel 1 Scale,2.00V/div",
        "CH2 scale,0.5"
      })
  void scalesOfOtherThings(String line) throws Exception {
    assertThat(understood(folder, "rate: 1000 Hz\n" + line + "\nCH1\n0\n100\n-200\n300\n"))
        .isEqualTo(
            """
            CH1 in count: every 0.001 s from 0.0 s: 0.0 100.0 -200.0 300.0
            ! channel CH1 holds whole numbers, taken as counts of a converter; nothing says what a \
            count is worth in volts: state scale and unit in [[capture.columns]] of the job sheet
            """);
  }

  @Test
  void aProbeFactorOfBareCounts() throws Exception {
    assertThat(understood(folder, "rate: 1000 Hz\nProbe,10X\nCH1 (counts)\n0\n100\n-200\n300\n"))
        .isEqualTo(
            """
            CH1 in count: every 0.001 s from 0.0 s: 0.0 100.0 -200.0 300.0
            ! line 2 states a probe factor of 10; not applied, because nothing says what a count is \
            worth
            ! channel CH1 holds whole numbers, taken as counts of a converter; nothing says what a \
            count is worth in volts: state scale and unit in [[capture.columns]] of the job sheet
            """);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "SampleInterval 5e-6 s",
        "sample rate 200 000 Hz",
        "Sampling rate is 200 kHz",
        "Sampled at 200 kHz",
        "rate=200k",
        "# 200 ksps",
        "1 sample = 5 us",
        "fs_khz: 200",
        "dt_us,5",
        "Maximum sample rate 1 MHz, sample rate 0.2 mHz"
      })
  void clocks(String line) throws Exception {
    assertThat(understood(folder, line + "\nCH1 (V)\n0.5\n1.25\n-0.5\n"))
        .isEqualTo("CH1 in V: every 5.0E-6 s from 0.0 s: 0.5 1.25 -0.5\n");
  }
}
