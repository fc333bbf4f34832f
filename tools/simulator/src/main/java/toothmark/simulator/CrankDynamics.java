package toothmark.simulator;

import toothmark.simulator.SpeedProfile.Drive;
import toothmark.simulator.SpeedProfile.Phase;

/**
 * Solves the crank's equation of motion, inertia times acceleration equals the sum of torques, with
 * the classical fourth-order Runge-Kutta method.
 */
final class CrankDynamics {
  /** The motion, and the firings that the limiter took away. */
  record Result(CrankMotion motion, FiredEvents events) {}

  private static final double STEP_SECONDS = 50e-6;
  private static final double WARM_UP_SECONDS = 0.4;
  private static final double MARGIN_SECONDS = 0.02;
  private static final double RADIANS = Math.PI / 180.0;
  private static final double RPM = Math.PI / 30.0;
  private static final double FOLLOW_SECONDS = 0.05;
  private static final double PEAK_NM_PER_LITRE = 120.0;
  private static final double STATIC_RPM = 1.0;
  private static final double STARTER_FREE_SPEED = 1.35;
  private static final double STARTER_INERTIA = 2.0;
  private static final double STARTER_RELEASE = 2.0;
  private static final double COLD_DRAG = 1.8;

  /** At rest the air leaks out, so that the first compression starts half-way up the stroke. */
  private static final double FIRST_COMPRESSION = 0.6;

  private static final int GAINS = 4096;

  private final Engine engine;
  private final SpeedProfile profile;
  private final Limiter limiter;
  private final TorqueModel torque;
  private final double[] gain = new double[GAINS];
  private final double[] wander = new double[4];
  private final FiredEvents events = new FiredEvents();
  private final double firstDegrees;
  private final double fullCompressionDegrees;
  private Phase phase;
  private double targetOmega;
  private double starterMeanOmega;
  private double targetSlope;
  private boolean cutting;
  private long decided = Long.MIN_VALUE;

  CrankDynamics(Engine engine, SpeedProfile profile, Limiter limiter, Randomness random) {
    this.engine = engine;
    this.profile = profile;
    this.limiter = limiter;
    torque = new TorqueModel(engine);
    for (int i = 0; i < GAINS; i++) {
      gain[i] = 1.0 + profile.unevenness().combustion() * random.gaussian();
    }
    for (int i = 0; i < wander.length; i++) {
      wander[i] = random.uniform();
    }
    double interval = engine.firingIntervalDegrees();
    firstDegrees =
        profile.startRpm() > 0
            ? random.uniform(0.0, 720.0)
            : interval * (random.below(8) + random.uniform(0.35, 0.65));
    fullCompressionDegrees =
        profile.startRpm() > 0 ? firstDegrees - interval : firstDegrees + interval;
  }

  /** The motion from a little before time zero to a little after the given time. */
  Result run(double seconds) {
    double start = profile.startRpm() > 0 ? -WARM_UP_SECONDS : -STEP_SECONDS;
    int steps = (int) Math.ceil((seconds + MARGIN_SECONDS - start) / STEP_SECONDS);
    double[] angle = new double[steps + 1];
    double[] speed = new double[steps + 1];
    double degrees = firstDegrees;
    double omega = profile.startRpm() * RPM;
    for (int i = 0; i <= steps; i++) {
      angle[i] = degrees;
      speed[i] = omega / RADIANS;
      double t = start + i * STEP_SECONDS;
      decideFiring(degrees, omega / RPM);
      aim(t + 0.5 * STEP_SECONDS);
      holdStarter(omega);
      double h = STEP_SECONDS;
      double a1 = acceleration(degrees, omega);
      double w2 = omega + 0.5 * h * a1;
      double a2 = acceleration(degrees + 0.5 * h * omega / RADIANS, w2);
      double w3 = omega + 0.5 * h * a2;
      double a3 = acceleration(degrees + 0.5 * h * w2 / RADIANS, w3);
      double w4 = omega + h * a3;
      double a4 = acceleration(degrees + h * w3 / RADIANS, w4);
      degrees += h / 6.0 * (omega + 2.0 * w2 + 2.0 * w3 + w4) / RADIANS;
      omega += h / 6.0 * (a1 + 2.0 * a2 + 2.0 * a3 + a4);
    }
    return new Result(new CrankMotion(start, STEP_SECONDS, angle, speed), events);
  }

  /** One firing interval ahead of each TDC the limiter decides whether its spark is cut. */
  private void decideFiring(double degrees, double rpm) {
    long event = (long) Math.floor(degrees / torque.intervalDegrees()) + 2;
    if (limiter.action() != Limiter.Action.CUT_SPARKS || event <= decided) {
      return;
    }
    decided = event;
    cutting = cutting ? rpm > limiter.rpm() - limiter.hysteresisRpm() : rpm > limiter.rpm();
    if (cutting) {
      events.cut(event);
    }
  }

  private double acceleration(double degrees, double omega) {
    double sliding = Math.max(-1.0, Math.min(1.0, omega / (STATIC_RPM * RPM)));
    double drag = starterMeanOmega > 0.0 ? COLD_DRAG : 1.0;
    double friction = drag * engine.frictionNm() * sliding;
    double leaked = degrees < fullCompressionDegrees ? FIRST_COMPRESSION : 1.0;
    double gas = leaked * phase.manifoldBar() * torque.gasNmPerBar(degrees);
    double mass = torque.massKgM2PerRadian(degrees) * omega * omega;
    double sum = gas - mass - friction;
    double inertia = engine.inertiaKgM2();
    if (starterMeanOmega > 0.0) {
      sum += starterNm(starterMeanOmega, omega);
      inertia *= STARTER_INERTIA;
    }
    if (phase.drive() == Drive.FIRING) {
      sum += firingNm(degrees, omega);
    }
    return sum / inertia;
  }

  /** The starter is held until the engine has run away from it. */
  private void holdStarter(double omega) {
    if (phase.drive() == Drive.STARTER) {
      starterMeanOmega = phase.targetRpm() * RPM;
    } else if (phase.drive() == Drive.COASTING || omega > STARTER_RELEASE * starterMeanOmega) {
      starterMeanOmega = 0.0;
    }
  }

  private double starterNm(double meanOmega, double omega) {
    double free = STARTER_FREE_SPEED * meanOmega;
    return Math.max(0.0, COLD_DRAG * engine.frictionNm() * (free - omega) / (free - meanOmega));
  }

  private double firingNm(double degrees, double omega) {
    double follow = (targetOmega - omega) / FOLLOW_SECONDS;
    double wanted = engine.inertiaKgM2() * (targetSlope + follow);
    double mean = wanted + engine.frictionNm();
    if (mean <= 0.0) {
      return mean;
    }
    mean = Math.min(mean, PEAK_NM_PER_LITRE * engine.displacementLitres());
    double interval = torque.intervalDegrees();
    long event = (long) Math.floor(degrees / interval);
    double sum = 0.0;
    for (int i = 0; i < torque.overlap(); i++) {
      long e = event - i;
      if (!events.isCut(e)) {
        sum += gain[(int) Math.floorMod(e, (long) GAINS)] * torque.pulse(degrees - e * interval);
      }
    }
    return mean * sum;
  }

  /** Sets the phase, the target speed and its slope for one step. */
  private void aim(double t) {
    int index = 0;
    double began = 0.0;
    double from = profile.startRpm();
    int last = profile.phases().size() - 1;
    while (index < last && t >= began + profile.phases().get(index).seconds()) {
      began += profile.phases().get(index).seconds();
      from = profile.phases().get(index).targetRpm();
      index++;
    }
    phase = profile.phases().get(index);
    double share = (t - began) / phase.seconds();
    double rise = phase.targetRpm() - from;
    double straight = from + Math.max(0.0, Math.min(1.0, share)) * rise;
    targetOmega = straight * (1.0 + profile.unevenness().wander() * slowWander(t)) * RPM;
    targetSlope = share >= 0.0 && share < 1.0 ? rise / phase.seconds() * RPM : 0.0;
  }

  private double slowWander(double t) {
    double first = StrictMath.sin(2.0 * Math.PI * ((0.4 + wander[0]) * t + wander[1]));
    double second = StrictMath.sin(2.0 * Math.PI * ((1.5 + wander[2]) * t + wander[3]));
    return first + 0.5 * second;
  }
}
