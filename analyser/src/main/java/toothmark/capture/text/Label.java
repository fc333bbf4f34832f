package toothmark.capture.text;

import java.util.Arrays;
import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import toothmark.capture.text.Settings.Key;

/**
 * What the words before a value name.
 *
 * @param key the setting
 * @param owner whose it is, such as {@code ch1}; empty text when no channel is named
 * @param meant what its numbers are in, as far as the words say
 */
record Label(Key key, String owner, CountUnit meant) {

  /** Letters of the longest name that is looked up; a text without delimiters is none. */
  private static final int LONGEST = 200;

  private static final Pattern COPULA = Pattern.compile("(?i)(?<=.) (is|are|was|of)$");

  /** Ways to say channel 1. */
  private static final Pattern CHANNEL =
      Pattern.compile(
          "(?i)\\b(?:channel|chan|ch|kanal|canal|canale|voie|input|eingang|trace|analog)"
              + "[ ._#-]?(\\d{1,2}|[a-h])(?![\\p{L}\\d])");

  private static final Pattern NUMBERED = Pattern.compile("ch(\\d{1,2}|[a-h])");
  private static final Pattern ENDS_IN_A_NUMBER = Pattern.compile("(.*[a-z]) ?(\\d{1,2})");
  private static final Pattern BRACKET = Pattern.compile("[(\\[]([^)\\]]*)[)\\]].*");

  private static final Set<String> OF_THE_SCREEN =
      Words.set(
          "vertical,horizontal,display,screen,zoom,grid,plot,cursor,trigger,time,vertikal,vertikale,"
              + "bildschirm,verticale,pantalla");
  private static final Set<String> OF_NO_SAMPLES =
      Words.set(
          "refresh,frame,update,baud,bit,trigger,display,screen,maximum,max,minimum,min,limit");

  /** Words that turn the name of a key into that of another thing, such as divisions or baud. */
  private static final Map<Key, Set<String>> ANOTHER =
      Map.of(
          Key.SCALE, OF_THE_SCREEN,
          Key.OFFSET, OF_THE_SCREEN,
          Key.RATE, OF_NO_SAMPLES,
          Key.INTERVAL, OF_NO_SAMPLES,
          Key.POINTS, Words.set("extra,requested,pre,post,pretrigger,posttrigger,lost,averaged"));

  /** A channel in one form, however its number is written. */
  static String glued(String text) {
    return CHANNEL.matcher(text).replaceAll("ch$1");
  }

  /** A channel's name in the form of owners. */
  static String channel(String name) {
    return Words.normal(glued(name));
  }

  /** Whether an owner is a numbered channel. */
  static boolean isNumbered(String owner) {
    return NUMBERED.matcher(owner).matches();
  }

  /**
   * Understands the words before a value.
   *
   * @param words before the first number or bracket
   * @param rest what follows them: perhaps a unit or a channel in brackets
   * @param channels names of the channels, in the form of owners
   * @return null when they name no setting
   */
  static Label of(String words, String rest, Collection<String> channels) {
    if (words.length() > LONGEST) {
      return null;
    }
    String bare = COPULA.matcher(words).replaceFirst("");
    Label found = findEitherWay(bare, channels);
    found = found == null ? withUnit(bare, channels) : found;
    Matcher bracket = BRACKET.matcher(rest);
    return found == null || !bracket.matches() ? found : found.with(bracket.group(1), channels);
  }

  /** The other side of {@code 1 LSB = 5 mV}, {@code 1 V = 200 counts}, {@code 1 sample = 5 us}. */
  static Label ofOne(String thing) {
    Unit unit = Unit.parse(thing);
    if (CountUnit.isCount(thing)) {
      return new Label(Key.SCALE, "", CountUnit.NONE);
    }
    if (CountUnit.isLevel(unit)) {
      return new Label(Key.SCALE, "", new CountUnit(unit, true));
    }
    return Words.normal(thing).equals("sample")
        ? new Label(Key.INTERVAL, "", CountUnit.NONE)
        : null;
  }

  private static Label findEitherWay(String text, Collection<String> channels) {
    Label found = find(Words.normal(text), channels);
    return found == null ? find(Words.split(text), channels) : found;
  }

  private static Label find(String words, Collection<String> channels) {
    Label found = named(words, "");
    int first = words.indexOf(' ');
    for (int cut = first; cut > 0 && found == null; cut = words.indexOf(' ', cut + 1)) {
      String head = words.substring(0, cut);
      String tail = words.substring(cut + 1);
      found = cut == first || isChannel(head, channels) ? named(tail, head) : null;
      found = found == null && isChannel(tail, channels) ? named(head, tail) : found;
    }
    Matcher numbered = ENDS_IN_A_NUMBER.matcher(words);
    return found == null && numbered.matches()
        ? named(numbered.group(1), "ch" + numbered.group(2))
        : found;
  }

  private static boolean isChannel(String words, Collection<String> channels) {
    return isNumbered(words) || channels.contains(words);
  }

  private static Label named(String name, String owner) {
    Key key = Key.named(name);
    CountUnit worth = key == null ? CountUnit.parse(name) : null;
    if (key == null && worth == null) {
      return null;
    }
    key = worth == null ? key : Key.SCALE;
    Set<String> another = ANOTHER.getOrDefault(key, Set.of());
    boolean other = Arrays.stream(owner.split(" ")).anyMatch(another::contains);
    return other ? null : new Label(key, owner, worth == null ? CountUnit.NONE : worth);
  }

  /** A name that ends in its unit, such as {@code fs_Hz}. */
  private static Label withUnit(String words, Collection<String> channels) {
    int cut = Math.max(words.lastIndexOf('_'), words.lastIndexOf(' '));
    Unit unit = cut > 0 ? Unit.parse(words.substring(cut + 1)) : null;
    Label found = unit == null ? null : findEitherWay(words.substring(0, cut), channels);
    return found == null ? null : new Label(found.key, found.owner, new CountUnit(unit, false));
  }

  private Label with(String inBracket, Collection<String> channels) {
    CountUnit worth = CountUnit.parse(inBracket);
    Unit unit = worth == null ? Unit.parse(inBracket) : worth.unit();
    if (unit != null) {
      return new Label(key, owner, worth == null ? new CountUnit(unit, false) : worth);
    }
    String channel = channel(inBracket.matches("\\d{1,2}") ? "ch" + inBracket : inBracket);
    return isChannel(channel, channels) ? new Label(key, channel, meant) : this;
  }

  /** The same with an owner where it has none. */
  Label ownedBy(String other) {
    return owner.isEmpty() ? new Label(key, other, meant) : this;
  }
}
