package toothmark.desktop;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JMenuItem;
import toothmark.desktop.JobDraft.Field;

/** Offers to say what a channel is. */
final class RolesMenu {

  private final DeskModel model;
  private final Commands commands;

  RolesMenu(DeskModel model, Commands commands) {
    this.model = model;
    this.commands = commands;
  }

  /** An item for each role; the last coil is a new one, whose cylinders the job sheet then asks. */
  List<JMenuItem> items(String channel) {
    JobDraft now = model.job.draft.get();
    List<JMenuItem> items = new ArrayList<>();
    items.add(item("role.crank", channel, "", now.withRole(Field.CRANK, channel)));
    items.add(item("role.tdc", channel, "", now.withRole(Field.TDC, channel)));
    for (int i = 0; i < now.coils().size(); i++) {
      items.add(item("role.coil", channel, now.name(i), now.withCoil(i, channel)));
    }
    JobDraft more = now.withNewCoil(channel, found(channel));
    JMenuItem coil = item("role.coil", channel, more.name(more.coils().size() - 1), more);
    coil.addActionListener(e -> commands.run("job"));
    items.add(coil);
    items.add(item("role.none", channel, "", now.withoutRole(channel)));
    return items;
  }

  /** What the coil is called that was found on a channel. */
  private Optional<String> found(String channel) {
    return model.examination().stream()
        .flatMap(e -> e.roles().coils().entrySet().stream())
        .filter(c -> c.getValue().equals(channel))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  private JMenuItem item(String key, String channel, String coil, JobDraft then) {
    JMenuItem item = new JMenuItem(Phrases.of(key, channel, coil));
    item.addActionListener(e -> model.job.edit(then));
    return item;
  }
}
