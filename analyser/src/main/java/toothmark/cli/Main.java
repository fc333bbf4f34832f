package toothmark.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Starts Toothmark from the command line. */
@Command(
    name = "toothmark",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      ExamineCommand.class,
      ChannelsCommand.class,
      CompareCommand.class,
      ReplayCommand.class,
      DeskCommand.class,
      TdcCommand.class,
      StrobeCommand.class,
      FiringCommand.class,
      TapeCommand.class,
      PistonCommand.class
    },
    synopsisSubcommandLabel = "COMMAND",
    description = "Examines crank-sensor and ignition captures of engines with a trigger wheel.",
    footer = {
      "",
      "Examples:",
      "  toothmark examine idle.csv",
      "  toothmark channels idle.csv",
      "  toothmark examine sweep.csv.gz --job job.toml --log controller.csv --out sweep",
      "  toothmark tdc 21 15",
      "  toothmark tape --diameter 150",
      "",
      "'toothmark COMMAND --help' explains a command."
    })
public final class Main implements Runnable {

  @Spec private CommandSpec spec;

  /** Made by the command-line parser. */
  Main() {}

  /**
   * Runs a command and ends the process with its exit code.
   *
   * @param arguments see {@code toothmark --help}
   */
  public static void main(String[] arguments) {
    int code = commandLine().execute(arguments);
    System.out.flush();
    System.exit(code);
  }

  /** Everything that can be called, with what is printed and returned when it fails. */
  static CommandLine commandLine() {
    return new CommandLine(new Main())
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setParameterExceptionHandler(Failures::unusableArguments)
        .setExecutionExceptionHandler(Failures::failed);
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "a command is missing");
  }
}
