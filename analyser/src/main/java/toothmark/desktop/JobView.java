package toothmark.desktop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import net.miginfocom.swing.MigLayout;
import toothmark.desktop.JobDraft.Field;
import toothmark.ignition.PickUp;

/** The job sheet as a form; checked while one types, and examined by as soon as it is right. */
final class JobView extends Column {

  private static final long serialVersionUID = 1L;

  private static final String OUTLINE = "JComponent.outline";
  private static final String FAULTY = "error";
  private static final String DOUBTFUL = "warning";
  private static final String PLACEHOLDER = "JTextField.placeholderText";
  private static final int NOTE_ROWS = 3;

  private final transient DeskModel model;
  private final Map<Field, JComponent> inputs = new EnumMap<>(Field.class);
  private final Map<Field, Prose> complaints = new EnumMap<>(Field.class);
  private final JPanel coils = new JPanel(new MigLayout("insets 0, gapy 4, fillx", "[grow,fill]"));
  private final Prose coilComplaint = new Prose();
  private final SheetMending mending;
  private boolean filling;

  JobView(DeskModel model, Commands commands) {
    super(new MigLayout("insets 10, gapy 2, fillx, wrap 1", "[grow,fill]"));
    this.model = model;
    setName("job");
    mending = new SheetMending(model.job, commands);
    add(mending, "wmin 40, hidemode 3");
    heading("job.wheel");
    text(Field.PATTERN);
    text(Field.TOOTH1);
    text(Field.CIRCLE);
    heading("job.sensor");
    choice(Field.KIND, false);
    choice(Field.EDGE, false);
    heading("job.channels");
    choice(Field.CRANK, true);
    choice(Field.TDC, true);
    heading("job.tdc");
    text(Field.STOP);
    text(Field.TOOTH1_READ);
    file(Field.LIGHT, commands);
    text(Field.READING);
    heading("job.engine");
    text(Field.CYLINDERS);
    text(Field.ORDER);
    text(Field.ANGLES);
    text(Field.ADVANCE);
    file(Field.TABLE, commands);
    text(Field.LOAD);
    heading("job.coils");
    add(coils);
    add(coilComplaint, "wmin 40, hidemode 3");
    add(new JButton(commands.add("addCoil", "", this::addCoil)), "growx 0");
    heading("job.report");
    text(Field.SHOP);
    text(Field.TITLE);
    notes();
    add(new JButton(commands.get("saveJob")), "gaptop 10, growx 0");
    model.job.draft.follow(d -> show(d));
    model.job.fault.watch(f -> complain());
    model.bench.session.watch(
        s -> {
          channels();
          complain();
        });
  }

  /** Goes to the text of a sheet that cannot be read. */
  void goToFault() {
    if (mending.isVisible()) {
      mending.requestFocusInWindow();
      scrollRectToVisible(mending.getBounds());
    }
  }

  private void heading(String key) {
    add(Caption.of(Phrases.of(key), () -> Look.strong(1.05)), "gaptop 8, gapbottom 2");
  }

  private void text(Field field) {
    JTextField input = new JTextField();
    String unstated = field == Field.PATTERN ? "job.auto" : "job.unstated";
    input.putClientProperty(PLACEHOLDER, Phrases.of(unstated));
    listen(field, input);
    place(field, input);
  }

  /** A file's name, typed or chosen. */
  private void file(Field field, Commands commands) {
    text(field);
    JButton choose = new JButton(commands.get("choose." + field.path()));
    choose.setName("choose." + field.path());
    add(choose, "growx 0");
  }

  private void notes() {
    JTextArea input = new JTextArea(NOTE_ROWS, 20);
    input.setLineWrap(true);
    input.setWrapStyleWord(true);
    input.setFocusTraversalKeys(java.awt.KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
    input.setFocusTraversalKeys(java.awt.KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
    listen(Field.NOTES, input);
    inputs.put(Field.NOTES, input);
    label(Field.NOTES, input);
    add(new JScrollPane(input), "wmin 40");
  }

  private void choice(Field field, boolean editable) {
    JComboBox<String> input = new JComboBox<>(Choices.of(field));
    input.setEditable(editable);
    input.addActionListener(
        e -> {
          if (!filling) {
            Object v = input.getSelectedItem();
            edit(field, Choices.value(field, v == null ? "" : v.toString()));
          }
        });
    place(field, input);
  }

  private void place(Field field, JComponent input) {
    inputs.put(field, input);
    label(field, input);
    add(input, "wmin 60");
    Prose complaint = new Prose();
    complaint.setName("complaint." + field.path());
    complaint.setVisible(false);
    complaints.put(field, complaint);
    add(complaint, "wmin 40, hidemode 3");
  }

  private void label(Field field, JComponent input) {
    input.setName("field." + field.path());
    JLabel label = new JLabel(Phrases.of("field." + field.path()));
    label.setLabelFor(input);
    input.setToolTipText(Phrases.of("field." + field.path() + ".help"));
    add(label, "gaptop 3, wmin 40");
  }

  private void listen(Field field, JTextComponent input) {
    changes(input, text -> edit(field, text));
  }

  private void changes(JTextComponent input, Consumer<String> then) {
    input
        .getDocument()
        .addDocumentListener(
            new Changed(
                () -> {
                  if (!filling) {
                    then.accept(input.getText());
                  }
                }));
  }

  private void edit(Field field, String text) {
    model.job.edit(model.job.draft.get().with(field, text), field);
  }

  private void show(JobDraft draft) {
    filling = true;
    inputs.forEach(
        (field, input) -> {
          String text = draft.get(field);
          if (input instanceof JTextComponent t && !t.getText().equals(text)) {
            t.setText(text);
          } else if (input instanceof JComboBox<?> c) {
            c.setSelectedItem(Choices.word(field, text));
          }
        });
    if (coils.getComponentCount() != draft.coils().size() || !rowsShow(draft)) {
      rows(draft);
    }
    filling = false;
    complain();
  }

  private boolean rowsShow(JobDraft draft) {
    for (int i = 0; i < draft.coils().size(); i++) {
      if (!((CoilRow) coils.getComponent(i)).draft().equals(draft.coils().get(i))) {
        return false;
      }
    }
    return true;
  }

  private void rows(JobDraft draft) {
    coils.removeAll();
    for (int i = 0; i < draft.coils().size(); i++) {
      coils.add(new CoilRow(i, draft.coils().get(i)), "wrap");
    }
    coils.revalidate();
    coils.repaint();
  }

  private void addCoil() {
    model.job.edit(model.job.draft.get().withNewCoil("", Optional.empty()));
  }

  private void complain() {
    RoleDoubts doubts = model.examination().map(RoleDoubts::of).orElse(RoleDoubts.NONE);
    complaints.forEach((f, p) -> outline(inputs.get(f), p, "", DOUBTFUL));
    outline(inputs.get(Field.TDC), complaints.get(Field.TDC), doubts.mark().orElse(""), DOUBTFUL);
    outline(coils, coilComplaint, String.join("\n", doubts.coils()), DOUBTFUL);
    model
        .job
        .fault
        .get()
        .ifPresent(
            fault ->
                fault
                    .field()
                    .filter(complaints::containsKey)
                    .ifPresentOrElse(
                        f -> outline(inputs.get(f), complaints.get(f), fault.message(), FAULTY),
                        () -> outline(coils, coilComplaint, fault.message(), FAULTY)));
    revalidate();
  }

  @Override
  public void updateUI() {
    super.updateUI();
    if (complaints != null) { // not yet while the panel is made
      SwingUtilities.invokeLater(this::complain); // once its parts are in the new look too
    }
  }

  private static void outline(JComponent input, Prose complaint, String message, String how) {
    input.putClientProperty(OUTLINE, message.isEmpty() ? null : how);
    complaint.say(message, () -> Look.regular(0.95));
    complaint.setForeground(Look.ink().trouble());
  }

  @SuppressWarnings("unchecked") // all choices are of strings
  private void channels() {
    filling = true;
    for (Field f : List.of(Field.CRANK, Field.TDC)) {
      JComboBox<String> box = (JComboBox<String>) inputs.get(f);
      Object now = box.getSelectedItem();
      box.removeAllItems();
      box.addItem(Phrases.of("job.auto"));
      names().forEach(box::addItem);
      box.setSelectedItem(now);
    }
    filling = false;
  }

  private List<String> names() {
    return model.bench.session.get().stream()
        .flatMap(s -> s.capture().channels().stream())
        .map(c -> c.name())
        .toList();
  }

  /** One coil: name, channel, cylinders and what its channel shows. */
  private final class CoilRow extends JPanel {

    private static final long serialVersionUID = 1L;

    private final int index;
    private final OptionalInt place;
    private final JTextField name = new JTextField();
    private final JComboBox<String> channel = new JComboBox<>();
    private final JTextField cylinders = new JTextField();
    private final JComboBox<String> signal =
        new JComboBox<>(Arrays.stream(PickUp.values()).map(PickUp::label).toArray(String[]::new));

    CoilRow(int index, CoilDraft draft) {
      super(new MigLayout("insets 0 0 6 0, gap 4, fillx", "[grow,fill][grow,fill][]"));
      this.index = index;
      this.place = draft.place();
      names().forEach(channel::addItem);
      channel.setEditable(true);
      name.setText(draft.name());
      name.putClientProperty(PLACEHOLDER, CoilDraft.nameAt(index));
      channel.setSelectedItem(draft.channel());
      cylinders.setText(draft.cylinders());
      signal.setSelectedItem(draft.signal());
      add(called(name, "coil.name"), "wmin 60");
      add(called(channel, "coil.channel"), "wmin 60");
      JButton remove = new JButton("×");
      called(remove, "coil.remove");
      remove.addActionListener(e -> remove());
      add(remove, "wrap");
      add(called(cylinders, "coil.cylinders"), "wmin 60");
      add(called(signal, "coil.signal"), "span 2, wmin 60");
      changes(name, t -> changed(name));
      changes(cylinders, t -> changed(cylinders));
      channel.addActionListener(e -> changed(channel));
      signal.addActionListener(e -> changed(signal));
    }

    private JComponent called(JComponent input, String key) {
      input.setName(key + "." + index);
      input.setToolTipText(Phrases.of(key));
      input.getAccessibleContext().setAccessibleName(Phrases.of(key));
      if (input instanceof JComboBox<?> box) { // one types in a part of its own
        JComponent typed = (JComponent) box.getEditor().getEditorComponent();
        typed.getAccessibleContext().setAccessibleName(Phrases.of(key));
      }
      return input;
    }

    CoilDraft draft() {
      return new CoilDraft(
          name.getText(),
          String.valueOf(channel.getSelectedItem()),
          cylinders.getText(),
          String.valueOf(signal.getSelectedItem()),
          place);
    }

    private void changed(JComponent input) {
      if (!filling) {
        List<CoilDraft> next = new ArrayList<>(model.job.draft.get().coils());
        next.set(index, draft());
        model.job.edit(model.job.draft.get().withCoils(next), input);
      }
    }

    private void remove() {
      List<CoilDraft> next = new ArrayList<>(model.job.draft.get().coils());
      next.remove(index);
      model.job.edit(model.job.draft.get().withCoils(next));
    }
  }
}
