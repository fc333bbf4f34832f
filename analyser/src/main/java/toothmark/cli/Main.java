package toothmark.cli;

import java.util.List;
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

  private static final List<Class<?>> COMMANDS =
      List.of(
          ExamineCommand.class,
          ChannelsCommand.class,
          CompareCommand.class,
          ReplayCommand.class,
          DeskCommand.class,
          TdcCommand.class,
          StrobeCommand.class,
          FiringCommand.class,
          TapeCommand.class,
          PistonCommand.class);

  @Spec private CommandSpec spec;

  /** Made by the command-line parser. */
  Main() {}

  /**
   * Runs a command and ends the process with its exit code.
   *
   * @param arguments see {@code toothmark --help}
   */
  public static void main(String[] arguments) {
    int code;
    try {
      code = commandLine(arguments).execute(arguments);
    } catch (OutOfMemoryError e) {
      System.err.println("toothmark: " + Failures.noMemory());
      code = Failures.OTHER;
    }
    System.out.flush();
    System.exit(code);
  }

  /**
   * What can be called, with what is printed and returned when it fails. The parser looks at every
   * command that it is given, which takes time: where the first argument names one, it gets no
   * other.
   */
  static CommandLine commandLine(String... arguments) {
    CommandLine line = new CommandLine(new Main());
    String first = arguments.length == 0 ? "" : arguments[0];
    List<Class<?>> named = COMMANDS.stream().filter(c -> nameOf(c).equals(first)).toList();
    (named.isEmpty() ? COMMANDS : named).forEach(c -> line.addSubcommand(nameOf(c), c));
    return line.setCaseInsensitiveEnumValuesAllowed(true)
        .setParameterExceptionHandler(Failures::unusableArguments)
        .setExecutionExceptionHandler(Failures::failed);
  }

  private static String nameOf(Class<?> command) {
    return command.getAnnotation(Command.class).name();
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "a command is missing");
  }
}
