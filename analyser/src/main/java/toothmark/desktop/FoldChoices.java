package toothmark.desktop;

import java.util.List;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import toothmark.capture.Channel;
import toothmark.chart.Fold;
import toothmark.examination.Examination;

/** Which channel is laid over itself, and by how much of the crank's turning. */
final class FoldChoices extends JPanel {

  private static final long serialVersionUID = 1L;

  private final transient DeskModel model;
  private final JComboBox<String> channel = new JComboBox<>();
  private final JComboBox<String> fold = new JComboBox<>();
  private boolean showing; // the boxes are being set, not chosen from

  FoldChoices(DeskModel model) {
    super(new MigLayout("insets 0, gap 4"));
    this.model = model;
    setOpaque(false);
    for (Fold f : Fold.values()) {
      fold.addItem(Phrases.of("fold." + f));
    }
    add(named(channel, "fold.channel"));
    add(named(fold, "fold.by"));
    channel.addActionListener(e -> chosen());
    fold.addActionListener(e -> chosen());
    model.bench.session.watch(s -> fill());
    model.folded.follow(f -> fill());
  }

  private static JComboBox<String> named(JComboBox<String> box, String name) {
    box.setName(name);
    box.getAccessibleContext().setAccessibleName(Phrases.of(name));
    return box;
  }

  private void fill() {
    showing = true;
    channel.removeAllItems();
    List<Channel> there =
        model.bench.session.get().map(s -> s.capture().channels()).orElse(List.of());
    there.forEach(c -> channel.addItem(c.name()));
    String wanted = model.folded.get().channel();
    boolean has = there.stream().anyMatch(c -> c.name().equals(wanted));
    channel.setSelectedItem(
        has ? wanted : model.examination().map(Examination::roles).map(r -> r.crank()).orElse(""));
    fold.setSelectedIndex(model.folded.get().fold().ordinal());
    showing = false;
  }

  private void chosen() {
    if (!showing && channel.getSelectedItem() instanceof String name) {
      model.folded.set(new DeskModel.Folded(name, Fold.values()[fold.getSelectedIndex()]));
    }
  }
}
