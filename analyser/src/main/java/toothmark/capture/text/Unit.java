package toothmark.capture.text;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Unit of a column, as a symbol of the base unit and the power of ten of its prefix.
 *
 * @param symbol {@code s}, {@code V}, {@code A}, {@code Hz}, {@code Ω}, or the text as written
 *     where it is none of these; empty when there is no unit
 * @param power a number in the file times 10^power is in the base unit
 */
record Unit(String symbol, int power) {

  static final Unit NONE = new Unit("", 0);
  static final Unit SECOND = new Unit("s", 0);

  static final Unit MINUTE = new Unit("min", 0);

  /** A bare count of converter steps, timer ticks or samples. */
  static final Unit COUNT = new Unit("count", 0);

  private static final Set<String> SECONDS =
      Words.set(
          "s,sec,secs,second,seconds,sekunde,sekunden,sek,seconde,secondes,segundo,"
              + "segundos,secondo,secondi,сек,с,秒");
  private static final Set<String> MINUTES = Words.set("min,mins,minute,minutes,minuten");
  private static final Set<String> VOLTS = Words.set("v,volt,volts,voltios,в,вольт");
  private static final Set<String> AMPERES = Words.set("amp,amps,ampere,amperes,amperios");
  private static final Set<String> HERTZ =
      Words.set(
          "hertz,samples/s,samples/sec,samples per second,sample/s,pts/s,ech/s,echantillons/s,muestras/s,"
              + "abtastungen/s,abtastwerte/s,werte/s,messungen/s,punkte/s");
  private static final Set<String> COUNTS =
      Words.set(
          "count,counts,lsb,raw,adc,code,codes,tick,ticks,digit,digits,samples,points,"
              + "adu,sequence");

  /** Such as {@code x1E-6 s}, {@code 10^-3 V}. */
  private static final Pattern TIMES_A_POWER =
      Pattern.compile(
          "[x*×]? ?(?:1?[eE]|10\\^|1(?:\\.0*)?[eE]|10\\*\\*)([+-]?\\d{1,2}) ?[*x×]? ?(\\D+)");

  boolean isTime() {
    return symbol.equals("s");
  }

  boolean isMinute() {
    return symbol.equals(MINUTE.symbol);
  }

  boolean isCount() {
    return symbol.equals(COUNT.symbol);
  }

  boolean isNone() {
    return symbol.isEmpty();
  }

  /** The prefix and symbol, for showing. */
  String text() {
    int third = power / 3;
    String prefix = third < -5 || third > 3 ? "?" : PREFIXES[third + 5];
    return prefix + symbol;
  }

  private static final String[] PREFIXES = {"f", "p", "n", "µ", "m", "", "k", "M", "G"};

  /**
   * Understands a unit.
   *
   * @param text such as {@code us}, {@code (mV)}, {@code [s]}, {@code Millisekunden}
   * @return the unit, or null when the text is no unit that matters here
   */
  static Unit parse(String text) {
    String t = plain(unbracket(text.strip()));
    if (t.isEmpty()) {
      return null;
    }
    Unit whole = base(t);
    if (whole != null) {
      return whole;
    }
    Matcher times = TIMES_A_POWER.matcher(t);
    Unit of = times.matches() ? parse(times.group(2)) : null;
    if (of != null) {
      return new Unit(of.symbol, of.power + Integer.parseInt(times.group(1)));
    }
    int prefix = prefixPower(t.charAt(0));
    Unit rest = t.length() > 1 && prefix != 0 ? symbolOnly(t.substring(1)) : null;
    if (rest != null) {
      boolean hertz = rest.symbol.equals("Hz");
      boolean shouted = prefix == 6 && !hertz && !rest.symbol.equals("Ω");
      return new Unit(rest.symbol, shouted ? -3 : hertz && prefix == -3 ? 6 : prefix);
    }
    return wordWithPrefix(Words.normal(t));
  }

  /** A unit that the user states: one that is not known is shown as it stands. */
  static Unit stated(String text) {
    Unit unit = parse(text);
    return unit == null ? new Unit(text, 0) : unit;
  }

  private static String unbracket(String t) {
    int end = t.length() - 1;
    boolean bracketed =
        end > 1
            && (t.charAt(0) == '(' && t.charAt(end) == ')'
                || t.charAt(0) == '[' && t.charAt(end) == ']'
                || t.charAt(0) == '{' && t.charAt(end) == '}'
                || t.charAt(0) == '<' && t.charAt(end) == '>');
    return bracketed ? t.substring(1, end).strip() : t;
  }

  /**
   * Brings every code point used for micro to u: U+00B5, U+03BC, and what is left of a mangled one.
   */
  private static String plain(String t) {
    StringBuilder b = new StringBuilder(t.length());
    for (int i = 0; i < t.length(); i++) {
      char c = t.charAt(i);
      boolean twoBytes = c == 'Â' && i + 1 < t.length() && t.charAt(i + 1) == 'µ';
      if (!twoBytes) {
        b.append(c == 'µ' || c == 'μ' || c == '\uFFFD' ? 'u' : c);
      }
    }
    return b.toString();
  }

  private static int prefixPower(char c) {
    return switch (c) {
      case 'f' -> -15;
      case 'p' -> -12;
      case 'n', 'N' -> -9;
      case 'u', 'U' -> -6;
      case 'm' -> -3;
      case 'k', 'K' -> 3;
      case 'M' -> 6;
      case 'G' -> 9;
      default -> 0;
    };
  }

  /**
   * Symbols that take a prefix letter. Megaseconds and megavolts are taken for shouted milli, and
   * millihertz for whispered mega.
   */
  private static Unit symbolOnly(String t) {
    return switch (t) {
      case "s", "S", "sec", "SEC", "Sec" -> SECOND;
      case "V", "v" -> new Unit("V", 0);
      case "A" -> new Unit("A", 0);
      case "Hz", "HZ", "hz", "S/s", "Sa/s", "éch/s", "ech/s", "SPS", "sps", "Sps" ->
          new Unit("Hz", 0);
      case "\u03a9", "\u2126", "Ohm", "ohm" -> new Unit("Ω", 0);
      default -> null;
    };
  }

  private static Unit base(String t) {
    Unit symbol = symbolOnly(t);
    return symbol != null ? symbol : word(Words.normal(t), 0);
  }

  private static Unit word(String w, int power) {
    if (SECONDS.contains(w)) {
      return new Unit("s", power);
    }
    if (VOLTS.contains(w)) {
      return new Unit("V", power);
    }
    if (AMPERES.contains(w)) {
      return new Unit("A", power);
    }
    if (HERTZ.contains(w)) {
      return new Unit("Hz", power);
    }
    if (power == 0 && MINUTES.contains(w)) {
      return MINUTE;
    }
    if (w.equals("ohm") || w.equals("ohms")) {
      return new Unit("Ω", power);
    }
    return power == 0 && COUNTS.contains(w) ? COUNT : null;
  }

  private static Unit wordWithPrefix(String w) {
    String[] prefixes = {"milli", "micro", "mikro", "nano", "pico", "kilo", "mega"};
    int[] powers = {-3, -6, -6, -9, -12, 3, 6};
    for (int i = 0; i < prefixes.length; i++) {
      if (w.startsWith(prefixes[i])) {
        return word(w.substring(prefixes[i].length()), powers[i]);
      }
    }
    return null;
  }
}
