package toothmark.findings;

/** What not to do, said the same way everywhere. */
final class Cautions {

  static final String TURNING =
      "Keep hands, leads and sleeves clear of belts and fans while the engine turns.";
  static final String UNPLUG =
      "Unplug the sensor before measuring its resistance; a meter's current can upset the"
          + " controller's input.";
  static final String BY_HAND =
      "Ignition and fuel off and key out while the wheel is turned by hand.";
  static final String HIGH_VOLTAGE =
      "Ignition voltage can kill and ruins instruments; probe coils only with an attenuated probe,"
          + " and never run a coil with its plug lead open.";
  static final String ADVANCE =
      "Wrong advance can break pistons: correct it before any load, and stop if the engine knocks.";
  static final String STARTER = "Do not crank for more than 10 s at a time; let the starter cool.";
  static final String RAW_FUEL =
      "Unburnt fuel overheats the exhaust and its catalyst: keep test runs short.";

  private Cautions() {}
}
