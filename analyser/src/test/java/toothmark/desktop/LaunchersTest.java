package toothmark.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What opens the window by a click, run from a copy of the tools whose program only notes how. */
class LaunchersTest {

  private static final Path TOOLS = Path.of("../tools");

  /** All that the specification of desktop entries asks to be escaped, but for a percent sign. */
  private static final String ODD = "a b$c`d\"e\\f";

  @Test
  @EnabledOnOs(OS.LINUX)
  void theMenuStartsTheWindowWhereverTheFolderIs(@TempDir Path folder) throws Exception {
    Path tools = Files.createDirectories(folder.resolve(ODD + "/tools"));
    Files.copy(TOOLS.resolve("add-to-menu"), tools.resolve("add-to-menu"));
    Path program = tools.resolve("toothmark");
    Files.writeString(program, "#!/bin/sh\n");
    assertThat(program.toFile().setExecutable(true)).isTrue();
    Path entry = folder.resolve("share/applications/toothmark.desktop");

    assertThat(run(folder, "sh", tools.resolve("add-to-menu").toString())).isZero();
    List<String> lines = Files.readAllLines(entry);
    assertThat(lines.get(0)).isEqualTo("[Desktop Entry]");
    String exec = lines.stream().filter(l -> l.startsWith("Exec=")).findFirst().orElseThrow();
    assertThat(arguments(exec.substring("Exec=".length())))
        .containsExactly(program.toString(), "desk", "%f");

    assertThat(run(folder, "sh", tools.resolve("add-to-menu").toString(), "--remove")).isZero();
    assertThat(entry).doesNotExist();
    assertThat(run(folder, "sh", tools.resolve("add-to-menu").toString(), "--x")).isEqualTo(2);
  }

  /**
   * Takes a command apart as the Desktop Entry Specification 1.5 has it: first the escapes of any
   * value, then those in quotes.
   */
  private static List<String> arguments(String value) {
    String text = value.replace("\\\\", "\\");
    List<String> arguments = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      StringBuilder argument = new StringBuilder();
      boolean quoted = text.charAt(at) == '"';
      at += quoted ? 1 : 0;
      while (at < text.length() && text.charAt(at) != (quoted ? '"' : ' ')) {
        at += quoted && text.charAt(at) == '\\' ? 1 : 0;
        argument.append(text.charAt(at++));
      }
      arguments.add(argument.toString());
      at += quoted ? 2 : 1;
    }
    return arguments;
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void theCommandFileOpensTheWindow(@TempDir Path folder) throws Exception {
    Path command = folder.resolve("desk.command");
    Files.copy(TOOLS.resolve("desk.command"), command);
    assertThat(Files.isExecutable(TOOLS.resolve("desk.command"))).isTrue();
    Path program = folder.resolve("toothmark");
    Files.writeString(program, "#!/bin/sh\n[ \"$*\" = \"desk a b\" ]\n");
    assertThat(program.toFile().setExecutable(true)).isTrue();
    assertThat(run(folder, "sh", command.toString(), "a", "b")).isZero();
  }

  private static int run(Path data, String... command) throws Exception {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.redirectOutput(ProcessBuilder.Redirect.DISCARD);
    builder.environment().put("XDG_DATA_HOME", data.resolve("share").toString());
    Process process = builder.start();
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return process.exitValue();
  }
}
