package toothmark.cli;

import picocli.CommandLine.IVersionProvider;

/** Says which build this is, from the jar's manifest. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    String version = Main.class.getPackage().getImplementationVersion();
    return new String[] {
      "toothmark " + (version == null ? "(not packaged)" : version),
      "Java " + System.getProperty("java.version")
    };
  }
}
