package toothmark.report;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import toothmark.chart.Points;
import toothmark.chart.RunOutline;
import toothmark.units.Measured;
import toothmark.wheel.ToothKind;

/**
 * Reads from the tables of a result folder what a comparison draws. A table that is not there, as
 * in results of an older version, leaves its picture out.
 */
final class OutlineReader {

  static final String TEETH = "teeth.csv";
  static final String SPARKS = "sparks.csv";
  static final String WHEEL = "wheel.csv";
  static final String TURNS = "turns.csv";

  /** What is read beside the figures. */
  static final List<String> TABLES = List.of(TEETH, SPARKS, WHEEL, TURNS);

  private static final double SECONDS_PER_MINUTE = 60;
  private static final double MICRO = 1e-6;

  private final Path folder;
  private final Object root;

  /**
   * Prepares to read.
   *
   * @param folder of results
   * @param root its {@code examination.json}, as {@link ResultReader#value} gives it
   */
  OutlineReader(Path folder, Object root) {
    this.folder = folder;
    this.root = root;
  }

  RunOutline read() throws IOException {
    Optional<Measured> delay = ResultReader.measured(root, "advance", "delay_us");
    return new RunOutline(
        speed(),
        Optional.of(ResultReader.text(root, "wheel", "pattern")).filter(p -> !p.isEmpty()),
        teeth(),
        gap(),
        ResultReader.measured(root, "advance", "offset_deg"),
        delay.map(d -> d.times(MICRO)),
        turns(),
        unit());
  }

  private String unit() {
    return ResultReader.list(root, "capture", "channels").stream()
        .filter(c -> ResultReader.text(c, "role").equals(ChannelRole.CRANK.label()))
        .map(c -> ResultReader.text(c, "unit"))
        .findFirst()
        .orElse("");
  }

  /** Whole turns, tooth 1 to tooth 1, in the middle of each. */
  private Points speed() throws IOException {
    Points speed = new Points();
    double[] last = {Double.NaN, Double.NaN, Double.NaN}; // time and turn of the last, first turn
    rows(
        TEETH,
        cells -> {
          if (!cells[1].equals("1") || !cells[3].equals(ToothKind.SEEN.label())) {
            return;
          }
          double time = Double.parseDouble(cells[0]);
          double turn = Double.parseDouble(cells[2]);
          if (turn == last[1] + 1) {
            last[2] = speed.isEmpty() ? last[1] : last[2];
            speed.add(last[1] - last[2], SECONDS_PER_MINUTE / (time - last[0]));
          }
          last[0] = time;
          last[1] = turn;
        });
    return speed;
  }

  private List<Measured> teeth() throws IOException {
    List<Measured> teeth = new ArrayList<>();
    rows(
        WHEEL,
        cells ->
            teeth.add(new Measured(Double.parseDouble(cells[1]), Double.parseDouble(cells[2]))));
    return teeth;
  }

  /** A coil's name may hold commas, so that cells are counted from the end. */
  private Points gap() throws IOException {
    BitSet leftOut = new BitSet();
    for (Object run : ResultReader.list(root, "advance", "left_out")) {
      leftOut.set(row(run, "from_row"), row(run, "to_row") + 1);
    }
    Points gap = new Points();
    int[] row = {0};
    rows(
        SPARKS,
        cells -> {
          String rpm = cells[cells.length - 4];
          String degrees = cells[cells.length - 1];
          if (!leftOut.get(++row[0]) && !rpm.isEmpty() && !degrees.isEmpty()) {
            gap.add(Double.parseDouble(rpm), Double.parseDouble(degrees));
          }
        });
    return gap;
  }

  private static int row(Object run, String end) {
    return ResultReader.number(run, end).orElse(0.0).intValue();
  }

  private List<RunOutline.Turn> turns() throws IOException {
    List<RunOutline.Turn> turns = new ArrayList<>();
    String[] last = {""};
    rows(
        TURNS,
        cells -> {
          if (!cells[0].equals(last[0])) {
            turns.add(new RunOutline.Turn(Double.parseDouble(cells[1]), new Points()));
            last[0] = cells[0];
          }
          turns
              .get(turns.size() - 1)
              .signal()
              .add(Double.parseDouble(cells[2]), Double.parseDouble(cells[3]));
        });
    return turns;
  }

  private void rows(String table, Row row) throws IOException {
    Path file = folder.resolve(table);
    if (!Files.exists(file)) {
      return;
    }
    try (BufferedReader in = Files.newBufferedReader(file)) {
      in.readLine();
      int number = 1;
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        number++;
        try {
          row.read(whole(line, in).split(",", -1));
        } catch (NumberFormatException | IndexOutOfBoundsException e) {
          throw new FileSystemException(
              file.toString(), null, "line " + number + " is no row of it; examine again");
        }
      }
    }
  }

  /** A name in quotes may run over several lines. */
  private static String whole(String line, BufferedReader in) throws IOException {
    StringBuilder row = new StringBuilder(line);
    String more = "";
    while (more != null && row.chars().filter(c -> c == '"').count() % 2 != 0) {
      more = in.readLine();
      row.append(more);
    }
    return row.toString();
  }

  private interface Row {
    void read(String[] cells);
  }
}
