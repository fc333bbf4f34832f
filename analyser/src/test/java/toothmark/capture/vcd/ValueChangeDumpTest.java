package toothmark.capture.vcd;

import static org.assertj.core.api.Assertions.assertThat;
import static toothmark.capture.CaptureText.refused;
import static toothmark.capture.CaptureText.understood;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import toothmark.capture.CaptureText;

/**
 * Value change dumps by the rules of IEEE Std 1364-2005, clause 18. The clause numbers and the
 * table of left extension are quoted from memory.
 */
class ValueChangeDumpTest {

  @TempDir Path folder;

  private static String dump(String variables, String changes) {
    return "$date today $end\n$timescale 1 us $end\n"
        + variables
        + "\n$enddefinitions $end\n"
        + changes;
  }

  /** 18.2.1: a scalar has no blank between value and code. */
  @Test
  void scalars() throws Exception {
    assertThat(
            understood(
                folder,
                dump(
                    "$var wire 1 ! crank $end\n$var wire 1 \" coil $end",
                    "#0\n$dumpvars\n1!\n0\"\n$end\n#50\n0!\n#75\n1!\n1\"\n#100\n")))
        .isEqualTo(
            """
            crank: levels 1.0 at 0.0 0.0 at 5.0E-5 1.0 at 7.5E-5 until 1.0E-4, step 1.0E-6
            coil: levels 0.0 at 0.0 1.0 at 7.5E-5 until 1.0E-4, step 1.0E-6
            """);
  }

  /** 18.2.3.5: 1, 10 or 100 of s to fs, with or without a blank. */
  @ParameterizedTest
  @CsvSource({
    "1 s,5.0",
    "10ms,0.05",
    "100 us,5.0E-4",
    "1us,5.0E-6",
    "10 ns,5.0E-8",
    "100ps,5.0E-10",
    "1 fs,5.0E-15",
    "1 \u00b5s,5.0E-6",
    "10 \u03bcs,5.0E-5"
  })
  void timescales(String timescale, String fifthTick) throws Exception {
    assertThat(
            understood(
                folder,
                "$timescale\n  "
                    + timescale
                    + "\n$end $var wire 1 a b $end $enddefinitions $end #0 0a #5 1a"))
        .startsWith("b: levels 0.0 at 0.0 1.0 at " + fifthTick + " until " + fifthTick);
  }

  /** 18.2.1: codes are any printable characters, so what a word is depends on its place. */
  @Test
  void codesThatLookLikeSomethingElse() throws Exception {
    assertThat(
            understood(
                folder,
                dump(
                    "$var wire 1 # a $end $var wire 1 $ b $end $var wire 1 $end c $end"
                        + " $var wire 1 #5 d $end $var reg 2 b1 e $end $var wire 1 0 f $end",
                    "#0 0# 0$ 0$end 0#5 b01 b1 00\n#5\n1# 1$ 1$end 1#5 b10 b1 10\n#6")))
        .isEqualTo(
            """
            a: levels 0.0 at 0.0 1.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            b: levels 0.0 at 0.0 1.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            c: levels 0.0 at 0.0 1.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            d: levels 0.0 at 0.0 1.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            e: levels 1.0 at 0.0 2.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            e[0]: levels 1.0 at 0.0 0.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            e[1]: levels 0.0 at 0.0 1.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            f: levels 0.0 at 0.0 1.0 at 5.0E-6 until 6.0E-6, step 1.0E-6
            """);
  }

  /** 18.2.1, left extension to 4 bits: 10 is 0010, x10 is xx10, zx0 is zzx0, 0x10 is 0x10. */
  @Test
  void shortVectorsAreExtendedOnTheLeft() throws Exception {
    String start = "#0 b1111 a\n";
    String declared = "$var wire 4 a bus [3:0] $end";
    assertThat(understood(folder, dump(declared, start + "#1 b10 a #2")))
        .isEqualTo(
            """
            bus: levels 15.0 at 0.0 2.0 at 1.0E-6 until 2.0E-6, step 1.0E-6
            bus[0]: levels 1.0 at 0.0 0.0 at 1.0E-6 until 2.0E-6, step 1.0E-6
            bus[1]: levels 1.0 at 0.0 until 2.0E-6, step 1.0E-6
            bus[2]: levels 1.0 at 0.0 0.0 at 1.0E-6 until 2.0E-6, step 1.0E-6
            bus[3]: levels 1.0 at 0.0 0.0 at 1.0E-6 until 2.0E-6, step 1.0E-6
            """);
    for (String extended : new String[] {"bx10", "bX10", "bxx10"}) {
      assertThat(understood(folder, dump(declared, start + "#1 " + extended + " a #2")))
          .contains("bus[0]: levels 1.0 at 0.0 0.0 at 1.0E-6 ")
          .contains("bus[2]: levels 1.0 at 0.0 until")
          .contains("bus[3]: levels 1.0 at 0.0 until")
          .endsWith("! bus: 1 value is x or z; the level before holds on\n");
    }
    assertThat(understood(folder, dump(declared, start + "#1 bzx0 a #2")))
        .contains("bus[0]: levels 1.0 at 0.0 0.0 at 1.0E-6 ")
        .contains("bus[1]: levels 1.0 at 0.0 until")
        .contains("bus[3]: levels 1.0 at 0.0 until");
    assertThat(understood(folder, dump(declared, start + "#1 b0x10 a #2")))
        .contains("bus[2]: levels 1.0 at 0.0 until")
        .contains("bus[3]: levels 1.0 at 0.0 0.0 at 1.0E-6 ");
  }

  @Test
  void bitsAreNumberedAsDeclared() throws Exception {
    assertThat(understood(folder, dump("$var wire 2 a bus[6:5] $end", "#0 b01 a")))
        .contains("bus[5]: levels 1.0 at 0.0 ")
        .contains("bus[6]: levels 0.0 at 0.0 ");
    assertThat(understood(folder, dump("$var wire 2 a bus [5:6] $end", "#0 b01 a")))
        .contains("bus[6]: levels 1.0 at 0.0 ")
        .contains("bus[5]: levels 0.0 at 0.0 ");
    assertThat(understood(folder, dump("$var wire 1 a bus [3] $end", "#0 1a")))
        .startsWith("bus[3]: levels 1.0 at 0.0 ");
  }

  /** 18.2.1: reals are r, the number, a blank and the code. */
  @Test
  void reals() throws Exception {
    assertThat(understood(folder, dump("$var real 64 v volts $end", "#0 r0 v #7 r-1.25e-3 v #9")))
        .isEqualTo("volts: levels 0.0 at 0.0 -0.00125 at 7.0E-6 until 9.0E-6, step 1.0E-6\n");
  }

  @Test
  void namesInOtherLetters() throws Exception {
    assertThat(understood(folder, dump("$var wire 1 a Z\u00fcndspule $end", "#0 1a\n#5 0a\n")))
        .startsWith("Z\u00fcndspule: levels 1.0 at 0.0 0.0 at 5.0E-6");
  }

  /** An event has no level; a change of it says when it took place. */
  @Test
  void events() throws Exception {
    assertThat(understood(folder, dump("$var event 1 a edge $end", "#5 1a\n#9 1a\n#12 1a\n")))
        .isEqualTo("edge: instants 5.0E-6 9.0E-6 1.2E-5, step 1.0E-6\n");
  }

  @Test
  void integersHaveASign() throws Exception {
    assertThat(
            understood(
                folder,
                dump("$var integer 32 i n $end", "#0 b" + "1".repeat(32) + " i #7 b101 i #9")))
        .isEqualTo("n: levels -1.0 at 0.0 5.0 at 7.0E-6 until 9.0E-6, step 1.0E-6\n");
  }

  /** x and z are no level. */
  @Test
  void unknownAndUndriven() throws Exception {
    assertThat(
            understood(
                folder, dump("$var wire 1 a s $end", "#0 xa #3 0a #5 za #6 xa #7 0a #8 1a #9 Xa")))
        .isEqualTo(
            """
            s: levels 0.0 at 3.0E-6 1.0 at 8.0E-6 until 9.0E-6, step 1.0E-6
            ! s: 4 values are x or z; the level before holds on
            """);
  }

  @Test
  void theLastValueAtATimeCounts() throws Exception {
    assertThat(understood(folder, dump("$var wire 1 a s $end", "#0 0a #5 1a 0a #7 1a #7 0a 1a #9")))
        .isEqualTo("s: levels 0.0 at 0.0 1.0 at 7.0E-6 until 9.0E-6, step 1.0E-6\n");
  }

  /** 18.2.3.7: one code may be declared under several names. */
  @Test
  void aliases() throws Exception {
    assertThat(
            understood(
                folder, dump("$var wire 1 a one $end $var wire 1 a two $end", "#0 0a #4 1a #9")))
        .isEqualTo(
            """
            one: levels 0.0 at 0.0 1.0 at 4.0E-6 until 9.0E-6, step 1.0E-6
            two: levels 0.0 at 0.0 1.0 at 4.0E-6 until 9.0E-6, step 1.0E-6
            """);
  }

  @Test
  void namesThatAreAlikeCarryTheirScope() throws Exception {
    assertThat(
            understood(
                folder,
                dump(
                    "$scope module bench $end $scope module left $end $var wire 1 a hall $end"
                        + " $upscope $end $scope module right $end $var wire 1 b hall $end"
                        + " $upscope $end $var wire 1 c tdc $end $upscope $end",
                    "#0 0a 0b 0c #4 1a 1b 1c")))
        .isEqualTo(
            """
            bench.left.hall: levels 0.0 at 0.0 1.0 at 4.0E-6 until 4.0E-6, step 1.0E-6
            bench.right.hall: levels 0.0 at 0.0 1.0 at 4.0E-6 until 4.0E-6, step 1.0E-6
            tdc: levels 0.0 at 0.0 1.0 at 4.0E-6 until 4.0E-6, step 1.0E-6
            """);
  }

  /** Times count from the dump's own zero, however late they begin and however long they are. */
  @Test
  void longTimes() throws Exception {
    assertThat(
            understood(
                folder,
                "$timescale 1 ps $end $var wire 1 a s $end $enddefinitions $end"
                    + " #1000000000000 0a #1000000000001 1a #3600000000000000 0a"))
        .isEqualTo(
            "s: levels 0.0 at 1.0 1.0 at 1.000000000001 0.0 at 3600.0 until 3600.0, step 1.0E-12\n");
  }

  @Test
  void dumpSectionsAndComments() throws Exception {
    assertThat(
            understood(
                folder,
                dump(
                    "$comment $var is not here $end $version bench 1.0 $end $var wire 1 a s $end",
                    "$comment before #0 $end #0 $dumpvars 0a $end #4 1a $dumpoff xa $end"
                        + " #6 $dumpon 0a $end $dumpall 0a $end #9 $comment end $end")))
        .startsWith("s: levels 0.0 at 0.0 1.0 at 4.0E-6 0.0 at 6.0E-6 until 9.0E-6, step 1.0E-6\n");
  }

  /** Codes are ASCII by the standard; others are told apart all the same, and names are UTF-8. */
  @Test
  void codesAndNamesBeyondAscii() throws Exception {
    assertThat(
            understood(
                folder,
                dump(
                    "$var wire 1 a\u00b5 s\u00b5 $end $var wire 1 b\u00b5 t $end $var wire 1 \u00b5 u"
                        + " $end",
                    "#0 0a\u00b5 1b\u00b5 1\u00b5 #5")))
        .isEqualTo(
            """
            s\u00b5: levels 0.0 at 0.0 until 5.0E-6, step 1.0E-6
            t: levels 1.0 at 0.0 until 5.0E-6, step 1.0E-6
            u: levels 1.0 at 0.0 until 5.0E-6, step 1.0E-6
            """);
  }

  /** Words that straddle the edges of the buffer. */
  @Test
  void longDumps() throws Exception {
    StringBuilder b = new StringBuilder("#0 0a\n");
    for (int i = 1; i <= 120_000; i++) {
      b.append('#').append(7L * i).append('\n').append(i % 2).append("a\n");
    }
    String text = understood(folder, dump("$var wire 1 a s $end", b.toString()));
    assertThat(text.split(" at ")).hasSize(120_002);
    assertThat(text).endsWith(" 0.0 at 0.84 until 0.84, step 1.0E-6\n");
  }

  @Test
  void refusals() throws Exception {
    String wire = "$var wire 1 a s $end";
    assertThat(refused(folder, "$date today $end $var wire 1 a s $end"))
        .isEqualTo(
            "capture.txt: line 1: the dump ends before $enddefinitions; copy the file again");
    assertThat(refused(folder, "$date today\n$var wire 1 a s"))
        .isEqualTo("capture.txt: line 1: $date is not closed by $end; copy the file again");
    assertThat(refused(folder, "$timescale 2 us $end"))
        .isEqualTo(
            "capture.txt: line 1: $timescale is '2us', but must be 1, 10 or 100 of s, ms, us, ns,"
                + " ps or fs; export the dump again with one of these");
    assertThat(refused(folder, "$var wire 1 a s $end $enddefinitions $end #0 0a"))
        .isEqualTo(
            "capture.txt: no $timescale says what a tick is worth; add a line such as $timescale 1"
                + " us $end");
    assertThat(refused(folder, dump(wire, "#0 0a\n#4 1b")))
        .isEqualTo("capture.txt: line 6: no $var declares the identifier code 'b'; mend the line");
    assertThat(refused(folder, dump(wire, "#5 0a\n#4 1a")))
        .isEqualTo("capture.txt: line 6: the time goes back from #5 to #4; split the file there");
    assertThat(refused(folder, dump(wire, "#5x 0a")))
        .isEqualTo("capture.txt: line 5: '#5x' is no time; mend the line");
    assertThat(refused(folder, dump(wire, "#5 hello")))
        .isEqualTo(
            "capture.txt: line 5: 'hello' is neither a time nor a value change; mend the line");
    assertThat(refused(folder, dump("$var wire many a s $end", "#0")))
        .isEqualTo(
            "capture.txt: line 3: the size of $var s is 'many', but must be a number of bits");
    assertThat(refused(folder, dump("$var wire 1 a s\n$var wire 1 b t $end", "#0 1a 1b")))
        .isEqualTo("capture.txt: line 4: $var s is not closed by $end; mend the line before");
    assertThat(refused(folder, dump(wire, "#0 xa #5")))
        .isEqualTo("capture.txt: the dump holds no value that is known; record the capture again");
  }

  @Test
  void aDumpNeedNotBeNamedLikeOne() throws Exception {
    assertThat(
            CaptureText.understood(
                folder, "\n  $version x $end " + dump("$var wire 1 a s $end", "#0 1a")))
        .startsWith("s: levels 1.0 at 0.0");
    for (String mark : new String[] {"\uFEFF", "\uFEFF\n"}) {
      assertThat(CaptureText.understood(folder, mark + dump("$var wire 1 a s $end", "#0 1a")))
          .startsWith("s: levels 1.0 at 0.0");
    }
  }
}
