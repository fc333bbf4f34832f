package toothmark.simulator.command;

import toothmark.simulator.Scenario;
import toothmark.simulator.file.CaseFolder.Compression;
import toothmark.simulator.file.Dialect;

/**
 * One capture of the catalogue.
 *
 * @param scenario what is simulated; its name is the folder's
 * @param dialect how the recorder writes it
 * @param compression of the capture's file
 * @param story what happened, as the keeper of the engine would tell it
 * @param shows what is to be seen in the capture
 */
record Sample(
    Scenario scenario, Dialect dialect, Compression compression, String story, String shows) {
  String name() {
    return scenario.name();
  }
}
