package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HistoryTest {

  @Test
  void stepsGoBackAndForth() {
    History<String> h = new History<>("a");
    h.step("b", 1);
    h.step("c", 2);
    assertThat(h.undo()).isEqualTo("b");
    assertThat(h.undo()).isEqualTo("a");
    assertThat(h.canUndo()).isFalse();
    assertThat(h.redo()).isEqualTo("b");
    h.step("d", 3);
    assertThat(h.canRedo()).isFalse();
    assertThat(h.undo()).isEqualTo("b");
  }

  @Test
  void lettersTypedIntoOneFieldAreOneStep() {
    History<String> h = new History<>("");
    h.step("3", "pattern");
    h.step("36", "pattern");
    h.step("36-1", "pattern");
    assertThat(h.undo()).isEmpty();
    assertThat(h.redo()).isEqualTo("36-1");
  }

  @Test
  void typingAfterAnUndoIsAStepOfItsOwn() {
    History<String> h = new History<>("");
    h.step("36", "pattern");
    h.step("x", "other");
    h.undo();
    h.step("60", "pattern");
    assertThat(h.undo()).isEqualTo("36");
  }
}
