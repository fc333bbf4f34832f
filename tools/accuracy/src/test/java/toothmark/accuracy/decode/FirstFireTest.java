package toothmark.accuracy.decode;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import toothmark.accuracy.CaseName;

/**
 * From the starter through first fire, where the speed grows fivefold within a turn of a wheel of
 * few teeth. The labels are the simulator's.
 */
class FirstFireTest {

  private static final int CAPTURES = 12;

  @ParameterizedTest
  @ValueSource(strings = {"24-1", "12-1"})
  void keepsTheCountThroughFirstFire(String wheel) {
    LabelStudy study = LabelStudies.starts();
    LabelScore all = LabelScore.NOTHING;
    for (int i = 0; i < CAPTURES; i++) {
      var capture = study.capture(new CaseName(study.name(), wheel + "_0", i));
      Decoding decoding = Decoding.of(capture);
      assertThat(decoding.naming().right()).as("wheel of case %d", i).isTrue();
      all = all.plus(decoding.ours());
    }
    assertThat(all.wrong()).isLessThan(all.teeth() / 50);
  }
}
