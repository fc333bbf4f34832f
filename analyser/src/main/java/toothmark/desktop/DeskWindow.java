package toothmark.desktop;

import java.awt.BorderLayout;
import java.awt.Dimension;
import java.awt.Insets;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Stream;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JMenu;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JTabbedPane;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import toothmark.capture.Channel;
import toothmark.chart.Figure;
import toothmark.chart.Figures;
import toothmark.findings.Picture;

/** The window: verdict above, findings, pictures and wheel in the middle, the capture below. */
final class DeskWindow {

  private static final Dimension FIRST_SIZE = new Dimension(1366, 740);
  private static final double SIDE_SHARE = 0.2;
  private static final double MOST_SHARE = 0.28;
  private static final double WHEEL_SHARE = 0.23;
  private static final int LEAST_SIDE = 250;
  private static final int MOST_SIDE = 400;

  /** Narrower, beside other windows, only verdict, pictures and strip have room. */
  private static final int ROOM_FOR_SIDES = 900;

  private static final Insets NARROW_TABS = new Insets(4, 5, 4, 5);

  private static final String UNDO = "undo";

  private static final Dimension LEAST = new Dimension(480, 360);

  final JFrame frame = new JFrame(Phrases.of("program"));
  final DeskModel model;
  final Commands commands = new Commands();
  final TraceView trace;
  final StripView strip;
  final WheelView wheel;
  final Pictures pictures;
  final JTabbedPane side = new JTabbedPane();
  private final JPanel right = new JPanel(new BorderLayout());
  private final JLabel keys = Caption.quiet(Phrases.of("trace.keys"), () -> Look.regular(0.92));
  private final JLabel pointer = Caption.of(" ", () -> Look.regular(0.92));
  private boolean sideAsked;
  private String doubted = "";
  final Notice notice;
  final FileDoor files;
  private final VerdictView verdict;
  private final FindingsView findings;
  private final JobView job;
  private final WhatIfView whatIf;
  private final ReadoutView readout;
  private Optional<AidsWindow> aids = Optional.empty();
  private Optional<ComparisonWindow> comparison = Optional.empty();

  DeskWindow(Executor background, RecentFiles recent) {
    model = new DeskModel(background, ForkJoinPool.commonPool(), SwingUtilities::invokeLater);
    files = new FileDoor(this, recent);
    notice = new Notice(model, commands);
    trace = new TraceView(model);
    strip = new StripView(model);
    wheel = new WheelView(model);
    new DeskCommands(this, files).add();
    pictures = new Pictures(model, files::savePicture);
    verdict = new VerdictView(model, commands);
    findings = new FindingsView(model);
    job = new JobView(model, commands);
    whatIf = new WhatIfView(model);
    readout = new ReadoutView(model, commands);
    lay();
    wire();
    frame.setJMenuBar(new Menus(commands, files, recent).bar());
    frame.setIconImages(Emblem.all());
    frame.setSize(FIRST_SIZE);
    frame.setMinimumSize(LEAST);
    frame.setLocationByPlatform(true);
    frame.setDefaultCloseOperation(JFrame.DO_NOTHING_ON_CLOSE);
    new FileDrop(files::openDropped).takeAllOver(frame);
  }

  private void lay() {
    JPanel top = new JPanel(new BorderLayout());
    top.add(notice, BorderLayout.NORTH);
    top.add(verdict, BorderLayout.CENTER);
    JPanel middle = new JPanel(new BorderLayout());
    middle.add(left(), BorderLayout.WEST);
    middle.add(new Centre(model, traceWithKeys(), pictures), BorderLayout.CENTER);
    middle.add(right(), BorderLayout.EAST);
    JPanel bottom = new JPanel(new BorderLayout());
    bottom.setBorder(BorderFactory.createEmptyBorder(4, 8, 6, 8));
    bottom.add(strip, BorderLayout.CENTER);
    JPanel all = new JPanel(new BorderLayout());
    all.add(top, BorderLayout.NORTH);
    all.add(middle, BorderLayout.CENTER);
    all.add(bottom, BorderLayout.SOUTH);
    frame.setContentPane(all);
  }

  private JComponent left() {
    side.setName("side");
    side.putClientProperty("JTabbedPane.tabInsets", NARROW_TABS);
    OneRow.of(side);
    side.addTab(Phrases.of("command.findings"), findings);
    side.addTab(Phrases.of("command.measures"), new MeasuresView(model).scrolled());
    side.addTab(Phrases.of("command.job"), job.scrolled());
    side.addTab(Phrases.of("command.whatIf"), whatIf.scrolled());
    return side;
  }

  private JComponent traceWithKeys() {
    JPanel upper =
        new JPanel(new BorderLayout()) {
          private static final long serialVersionUID = 1L;

          @Override
          public boolean requestFocusInWindow() {
            return trace.requestFocusInWindow();
          }
        };
    JPanel line = new JPanel(new BorderLayout(8, 0));
    line.setBorder(BorderFactory.createEmptyBorder(1, 6, 1, 6));
    line.add(keys, BorderLayout.CENTER);
    line.add(pointer, BorderLayout.EAST);
    upper.add(trace, BorderLayout.CENTER);
    upper.add(line, BorderLayout.SOUTH);
    return upper;
  }

  private JComponent right() {
    JPopupMenu menu = new JPopupMenu();
    SavingMenu.add(
        menu,
        "wheel",
        () -> model.examination().flatMap(e -> Figures.of(e, Look.ink()).draw(Picture.WHEEL)),
        files::savePicture);
    wheel.setComponentPopupMenu(menu);
    JPanel lower = new JPanel(new BorderLayout());
    JPanel turning = new JPanel(new MigLayout("insets 6 10 0 10, gap 6, fillx"));
    turning.add(commands.button("toothBack"), "growx, sizegroup t");
    turning.add(commands.button("play"), "growx, sizegroup t");
    turning.add(commands.button("toothOn"), "growx, sizegroup t");
    lower.add(turning, BorderLayout.NORTH);
    lower.add(readout, BorderLayout.CENTER);
    right.add(wheel, BorderLayout.CENTER);
    right.add(lower, BorderLayout.SOUTH);
    right.setBorder(BorderFactory.createEmptyBorder(0, 4, 0, 8));
    return right;
  }

  private void wire() {
    trace.addPropertyChangeListener(
        "pointer", e -> pointer.setText(String.valueOf(e.getNewValue())));
    trace.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent e) {
            offerRoles(e);
          }

          @Override
          public void mouseReleased(MouseEvent e) {
            offerRoles(e);
          }
        });
    Action together = commands.get("together");
    Desk.TOGETHER.add(model, on -> together.putValue(Action.SELECTED_KEY, on));
    Desk.TITLES.add(
        model,
        () -> {
          title();
          verdict.refresh();
        });
    model.bench.session.watch(s -> doubt());
    model.bench.compared.watch(c -> c.ifPresent(this::compared));
    model.job.draft.watch(d -> title());
    model.job.saved.watch(d -> title());
    frame.addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent e) {
            widths();
          }
        });
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowOpened(WindowEvent e) {
            trace.requestFocusInWindow();
          }

          @Override
          public void windowClosing(WindowEvent e) {
            files.close();
          }

          @Override
          public void windowClosed(WindowEvent e) {
            Desk.TOGETHER.remove(model);
            Desk.TITLES.remove(model);
          }
        });
  }

  /** The sides grow with window and type, but leave most to the pictures. */
  private void widths() {
    double scale = Look.scale();
    boolean room = frame.getWidth() >= ROOM_FOR_SIDES;
    side.setVisible(room || sideAsked);
    right.setVisible(room);
    keys.setVisible(room);
    double width =
        Math.max(LEAST_SIDE * scale, Math.min(MOST_SIDE * scale, SIDE_SHARE * frame.getWidth()));
    side.setPreferredSize(new Dimension((int) Math.min(width, MOST_SHARE * frame.getWidth()), 100));
    int right = (int) Math.min(1.1 * width, WHEEL_SHARE * frame.getWidth());
    wheel.setPreferredSize(new Dimension(right, (int) (120 * scale)));
    frame.getContentPane().revalidate();
  }

  /** Brings one of the side's parts to front, also where there was no room for the side. */
  void showSide(int tab) {
    sideAsked = true;
    widths();
    side.setSelectedIndex(tab);
    side.requestFocusInWindow();
  }

  /** Brings the job sheet to front, at the line that is wrong where it cannot be read. */
  void showSheet() {
    showSide(2);
    job.goToFault();
  }

  /** Says what was done where it is seen: also over the windows that stand before this one. */
  void say(String text, String command) {
    notice.say(text, command);
    aids.ifPresent(a -> a.notice.say(text, command));
    comparison.ifPresent(c -> c.notice.say(text, command));
  }

  /** Gives the room to the pictures where there is little. */
  void showPictures() {
    sideAsked = false;
    widths();
  }

  /** What a channel is, set by clicking it. */
  private void offerRoles(MouseEvent e) {
    Optional<Channel> channel = trace.channelAt(e);
    if (e.isPopupTrigger() && channel.isPresent()) {
      JPopupMenu menu = new JPopupMenu();
      new RolesMenu(model, commands).items(channel.get().name()).forEach(menu::add);
      offer(menu, e.getX(), e.getY());
    }
  }

  /** The same by the keyboard, which points at no channel: the roles of each. */
  void offerTrace() {
    JPopupMenu menu = new JPopupMenu();
    RolesMenu roles = new RolesMenu(model, commands);
    for (Channel c : model.bench.session.get().map(s -> s.capture().channels()).orElse(List.of())) {
      JMenu of = new JMenu(c.name());
      of.setName("channel." + c.name());
      roles.items(c.name()).forEach(of::add);
      menu.add(of);
    }
    offer(menu, trace.getWidth() / 2, trace.getHeight() / 2);
  }

  private void offer(JPopupMenu menu, int x, int y) {
    menu.addSeparator();
    SavingMenu.add(menu, "trace", this::waveform, files::savePicture);
    menu.show(trace, x, y);
  }

  /** What is in view of the crank signal, as the report draws it. */
  private Optional<Figure> waveform() {
    return model
        .examination()
        .flatMap(e -> Figures.of(e, Look.ink()).waveform(model.view.get().orElseThrow().shown()));
  }

  /** Asks whether a role is right that was given just now. */
  private void doubt() {
    String now = model.examination().map(e -> RoleDoubts.of(e).lines()).orElse("");
    String before = doubted;
    doubted = now;
    if (now.equals(before)) {
      return;
    }
    if (!now.isEmpty() && model.job.canUndo()) {
      notice.say(now, UNDO);
    } else if (!before.isEmpty()) {
      notice.putAway();
    }
  }

  private void title() {
    frame.setTitle(
        Desk.TITLES
            .of(model)
            .map(name -> (model.job.isUnsaved() ? "• " : "") + Phrases.of("title", name))
            .orElse(Phrases.of("program")));
  }

  private void compared(Compared found) {
    comparison.ifPresent(c -> c.frame.dispose());
    ComparisonWindow next =
        new ComparisonWindow(model, found, new Notice(model, commands), files::savePicture);
    comparison = Optional.of(next);
    next.showOver(frame);
  }

  /** The last comparison, while there is one. */
  Optional<ComparisonWindow> comparison() {
    return comparison;
  }

  /** The sums at the bench, made when first asked for. */
  AidsWindow aids() {
    AidsWindow shown =
        aids.orElseGet(
            () -> new AidsWindow(frame, model.job, new Notice(model, commands), files::savePrint));
    aids = Optional.of(shown);
    return shown;
  }

  void open(Path capture) {
    files.open(capture);
  }

  /** Draws everything anew after a change of colours or size. */
  void redress() {
    Redressing.of(frame);
    Stream.of(frame.getOwnedWindows()).forEach(Redressing::of);
    widths();
    trace.build();
    strip.build();
    wheel.build();
    pictures.refresh();
    verdict.refresh();
    findings.refresh();
    readout.refresh();
    whatIf.refresh();
    aids.ifPresent(AidsWindow::refresh);
    comparison.filter(c -> c.frame.isDisplayable()).ifPresent(ComparisonWindow::redress);
  }
}
