package toothmark.capture.text;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What the preamble states: one list of values for each key, in the order of the channels. */
final class Settings {

  /** What a preamble can state, with the names it goes by (in the form of {@link Words#normal}). */
  enum Key {
    INTERVAL(
        "sampling interval",
        "interval,sample interval,sampling interval,increment,x increment,xincr,xinc,"
            + "x incr,x inc,tinc,t inc,dt,delta t,deltat,sample period,sampling period,sampling time,"
            + "time per sample,time step,timestep,time increment,abtastintervall,abtastzeit,"
            + "schrittweite,ts,ta,tinterval,t interval,tsample,t sample,sample time,"
            + "seconds per sample,intervalle,pas de temps,intervalle d echantillonnage,"
            + "periode d echantillonnage,intervalo,intervalo de muestreo,periodo de muestreo,"
            + "intervallo,intervallo di campionamento,passo"),
    RATE(
        "sampling rate",
        "rate,sr,srate,f s,fsamp,fsample,samples per second,samples per sec,sampled at,sampling at,"
            + "recorded at,acquired at,sample freq,sampling freq,sample rate,sampling rate,samplerate,sampling frequency,sample frequency,"
            + "fs,abtastrate,abtastfrequenz,frequence d echantillonnage,"
            + "frecuencia de muestreo,tasa de muestreo,frequenza di campionamento,"
            + "taxa de amostragem"),
    START(
        "start",
        "start,start time,tstart,t start,x origin,xorigin,xzero,x zero,t0,first time,"
            + "time of first sample,time offset,startzeit,anfang,debut,inicio,inizio"),
    POINTS(
        "number of points",
        "points,record points,record length,samples,number of points,number of samples,"
            + "no of points,num points,numpoints,sample count,anzahl,punkte,messpunkte,"
            + "abtastwerte,echantillons,nombre de points,muestras,puntos,punti,campioni,"
            + "memory length"),
    SCALE(
        "scale",
        "scale,scale factor,lsb size,lsb weight,multiplier,skalierung,skalierungsfaktor,facteur,factor,faktor,y increment,"
            + "yincr,ymult,y mult,resolution per count"),
    OFFSET("offset", "offset,y offset,yoffset,yzero,y zero,y origin,yorigin,versatz"),
    REFERENCE("reference level", "y reference,yreference,y ref,yref"),
    PROBE(
        "probe factor",
        "probe,probe factor,probe attenuation,probe atten,probe ratio,attenuation,atten,"
            + "tastkopf,tastkopffaktor,tastteiler,teiler,sonde,attenuation sonde,sonda,"
            + "atenuacion,atenuacion de sonda,attenuazione,attenuazione sonda"),
    CLOCK("clock", "clock,clock frequency,cpu clock,f cpu,cpu frequency,takt,zeittakt"),
    TIMER(
        "counter clock",
        "timer clock,counter clock,timer frequency,tick,ticks,"
            + "tick time,tick rate,counter frequency,counter rate,timer rate,timer resolution,"
            + "counter resolution,time resolution,tick length,tick period,"
            + "ticks per second,counts per second"),
    PRESCALER("prescaler", "prescaler,prescale,clock divider,vorteiler"),
    UNIT(
        "unit",
        "unit,units,vertical units,vertical unit,y unit,y units,yunit,einheit,unite,"
            + "unidad,unita"),
    TIME_UNIT(
        "time unit",
        "time unit,time units,horizontal units,horizontal unit,x unit,x units,xunit,"
            + "zeiteinheit");

    private static final Map<String, Key> BY_NAME = new HashMap<>();

    static {
      for (Key key : values()) {
        for (String name : key.names.split(",")) {
          BY_NAME.put(name, key);
        }
      }
    }

    final String text;
    private final String names;

    Key(String text, String names) {
      this.text = text;
      this.names = names;
    }

    /** Whether its value is a unit. */
    boolean isUnit() {
      return this == UNIT || this == TIME_UNIT;
    }

    /** The key of a name; null when it is none of ours. */
    static Key named(String normalName) {
      return BY_NAME.get(normalName);
    }
  }

  /**
   * A stated value.
   *
   * @param number in the base unit of {@code unit}; null for the unit keys
   * @param unit as stated; {@link Unit#NONE} when not
   * @param place where it is stated, such as {@code line 3}
   */
  record Value(BigDecimal number, Unit unit, String place) {}

  private final Map<Key, List<Value>> values = new EnumMap<>(Key.class);

  /** Whose each value is, where another word stands before its name; empty text where none does. */
  private final Map<Key, List<String>> owners = new EnumMap<>(Key.class);

  private final List<String> channels;

  /**
   * Starts with nothing.
   *
   * @param channels their names, in the form of owners, as far as they are known
   */
  Settings(List<String> channels) {
    this.channels = channels;
  }

  boolean isEmpty() {
    return values.isEmpty();
  }

  /**
   * Keeps what is stated. A name that stands alone goes before one behind another word, such as
   * that of a channel; of the same kind the first one counts for each owner.
   *
   * @param owner that word, in the form of {@link Words#normal}; empty text for none
   */
  void put(Key key, List<Value> stated, String owner) {
    List<String> known = owners.getOrDefault(key, List.of());
    if (known.isEmpty() || owner.isEmpty() && !known.contains("")) {
      values.put(key, new ArrayList<>(stated));
      owners.put(key, new ArrayList<>(Collections.nCopies(stated.size(), owner)));
    } else if (!known.contains(owner) && areOfOneRow(known.get(0), owner)) {
      values.get(key).addAll(stated);
      known.addAll(Collections.nCopies(stated.size(), owner));
    }
  }

  /** Whether two words number channels in one way, such as {@code ch1} and {@code ch2}. */
  private boolean areOfOneRow(String one, String other) {
    int n = one.length();
    boolean alike = n > 0 && n == other.length() && one.regionMatches(0, other, 0, n - 1);
    boolean numbered = Label.isNumbered(one) && Label.isNumbered(other);
    return alike || numbered || channels.contains(one) && channels.contains(other);
  }

  /** All values of a key; empty when it is not stated. */
  List<Value> all(Key key) {
    return values.getOrDefault(key, List.of());
  }

  /** The first value of a key, or null. */
  Value first(Key key) {
    List<Value> all = all(key);
    return all.isEmpty() ? null : all.get(0);
  }

  /** What a count of a counter is worth: that of a timer, else of a clock; null when not stated. */
  Value counter() {
    return first(first(Key.TIMER) == null ? Key.CLOCK : Key.TIMER);
  }

  /**
   * The value of a key for a channel: its own, or the only one; null when not stated.
   *
   * @param channel its number, from 0
   * @param name its name
   */
  Value of(Key key, int channel, String name) {
    List<Value> all = all(key);
    String self = Label.channel(name);
    int own = all.isEmpty() ? -1 : owners.get(key).indexOf(self);
    if (own >= 0 && !name.isEmpty()) {
      return all.get(own);
    }
    if (all.size() == 1) {
      String owner = owners.get(key).get(0);
      boolean others = Label.isNumbered(owner) && Label.isNumbered(self);
      return others || channels.contains(owner) && channels.contains(self) ? null : all.get(0);
    }
    return channel < all.size() ? all.get(channel) : null;
  }

  List<Key> stated() {
    return new ArrayList<>(values.keySet());
  }
}
