package toothmark.cli;

import java.lang.reflect.InvocationTargetException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Opens the window; found by name, so that the command line starts without a window system. */
@Command(
    name = "desk",
    mixinStandardHelpOptions = true,
    description = {
      "Opens a window: the findings, the trace, the wheel, the figures and the job sheet.",
      "A job.toml and a controller.csv beside the capture are used with it.",
      ""
    },
    footerHeading = "%nExample:%n",
    footer = {"  toothmark desk sweep.csv.gz", "  toothmark desk before.csv after.csv"})
final class DeskCommand implements Callable<Integer> {

  private static final String DOOR = "toothmark.desktop.Desk";

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..*",
      paramLabel = "CAPTURE",
      description = {
        "what to open, several side by side;",
        "without it nothing, and at the first start a sample"
      })
  private List<Path> captures = List.of();

  @Override
  public Integer call() throws Exception {
    try {
      Class.forName(DOOR).getMethod("run", List.class).invoke(null, captures);
      return 0;
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof UnsupportedOperationException noDisplay) {
        spec.commandLine().getErr().println("toothmark: " + noDisplay.getMessage());
        return Failures.OTHER;
      }
      throw e;
    }
  }
}
