package toothmark.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import toothmark.report.TapeSheets;
import toothmark.report.WholeFile;
import toothmark.timing.DegreeTape;

/** Draws a degree tape for a pulley. */
@Command(
    name = "tape",
    mixinStandardHelpOptions = true,
    description = {
      "Draws a degree tape for a pulley or damper at true scale, with a ruler to check the print.",
      "",
      "Measure the pulley where the tape will lie, and give the thickness of the paper. Print at"
          + " 100 %%, measure the ruler, and only then cut.",
      "Stop the engine before you work at the pulley.",
      ""
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  toothmark tape --diameter 150",
      "  toothmark tape --diameter 178 --to 360 --from 0 --paper letter --out tape.svg"
    })
final class TapeCommand implements Callable<Integer> {

  @Spec private CommandSpec spec;

  @Option(
      names = "--diameter",
      required = true,
      paramLabel = "MM",
      description = "diameter of the pulley, mm")
  private double diameter;

  @Option(
      names = "--thickness",
      paramLabel = "MM",
      defaultValue = "0.1",
      description = "thickness of the tape, mm (${DEFAULT-VALUE})")
  private double thickness;

  @Option(
      names = "--from",
      paramLabel = "DEG",
      defaultValue = "-20",
      description = "lowest degree before TDC, negative after it (${DEFAULT-VALUE})")
  private int from;

  @Option(
      names = "--to",
      paramLabel = "DEG",
      defaultValue = "60",
      description = "highest degree before TDC (${DEFAULT-VALUE})")
  private int to;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      defaultValue = "A4",
      description = "a4 or letter (${DEFAULT-VALUE})")
  private TapeSheets.Paper paper;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      defaultValue = "tape.pdf",
      description = "ends in .pdf, or in .svg for one file each sheet (${DEFAULT-VALUE})")
  private Path out;

  @Override
  public Integer call() throws IOException {
    TapeSheets sheets = Failures.checked(spec, this::sheets);
    String name = out.getFileName().toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".pdf")) {
      write(out, sheets.pdf());
    } else if (name.endsWith(".svg")) {
      for (int i = 0; i < sheets.sheets(); i++) {
        write(sheetName(i, sheets.sheets()), sheets.svg(i).getBytes(StandardCharsets.UTF_8));
      }
    } else {
      throw new ParameterException(
          spec.commandLine(), "--out must end in .pdf or .svg, got \"" + out + "\"");
    }
    Paragraphs.of(spec)
        .say("Print at 100 %, and check that the ruler measures 100 mm before you cut.");
    return 0;
  }

  private TapeSheets sheets() {
    if (!(thickness >= 0)) {
      throw new IllegalArgumentException("the thickness cannot be negative, got " + thickness);
    }
    if (!(diameter > 0)) {
      throw new IllegalArgumentException("the diameter must be above 0 mm, got " + diameter);
    }
    return TapeSheets.of(new DegreeTape(diameter + 2 * thickness, from, to), paper);
  }

  private Path sheetName(int sheet, int sheets) {
    String name = out.getFileName().toString();
    String stem = name.substring(0, name.length() - ".svg".length());
    return sheets == 1 ? out : out.resolveSibling(stem + "-" + (sheet + 1) + ".svg");
  }

  private void write(Path file, byte[] content) throws IOException {
    WholeFile.write(file, content);
    Paragraphs.of(spec).row(file.toString());
  }
}
