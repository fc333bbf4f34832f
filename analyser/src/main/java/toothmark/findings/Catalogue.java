package toothmark.findings;

import java.util.List;

/**
 * All checks, in the order in which a technician would ask: capture, signal, wheel, noise, timing,
 * coils.
 */
final class Catalogue {

  static final List<Check> CHECKS =
      List.of(
          new NoCrankSignalCheck(),
          new CaptureTooShortCheck(),
          new CaptureTooSlowCheck(),
          new AcCoupledCheck(),
          new SensorClippedCheck(),
          new ProbeFactorCheck(),
          new SensorPolarityReversedCheck(),
          new WrongTimingEdgeCheck(),
          new WheelPatternMismatchCheck(),
          new WheelSlipCheck(),
          new IntermittentConnectionCheck(),
          new WeakSignalCheck(),
          new DamagedToothCheck(),
          new WheelRunOutCheck(),
          new WheelOvalCheck(),
          new UnevenTeethCheck(),
          new SensorBracketCheck(),
          new CrankTwistCheck(),
          new ExtraFeatureCheck(),
          new IgnitionInterferenceCheck(),
          new RandomNoiseCheck(),
          new PeriodicInterferenceCheck(),
          new GroundShiftCheck(),
          new GapNoiseCheck(),
          new StarterNoiseCheck(),
          new InputStageDropoutCheck(),
          new CoilsSwappedCheck(),
          new WheelMisalignedCheck(),
          new TimingDelayCheck(),
          new TimingScatterCheck(),
          new FilterLagCheck(),
          new ThresholdLagCheck(),
          new SpeedPredictionCheck(),
          new TimingStepCheck(),
          new TdcMarkCheck(),
          new TdcUnknownCheck(),
          new CoilSilentCheck(),
          new CoilMissesCheck(),
          new DoubleSparksCheck(),
          new DwellShortCheck(),
          new DwellLongCheck(),
          new DwellUnsteadyCheck(),
          new SignalFadingCheck(),
          new HallLevelsCheck(),
          new WheelUncertainCheck(),
          new NoReferenceCheck(),
          new KickBackCheck(),
          new SlowCrankingCheck(),
          new CompressionUnevenCheck(),
          new UnevenCylindersCheck(),
          new UnexplainedLossesCheck(),
          new LogRefusedCheck(),
          new SparkCutLimiterCheck(),
          new TimingRetardLimiterCheck(),
          new CrankingLossesCheck(),
          new EngineStopsCheck());

  private Catalogue() {}
}
