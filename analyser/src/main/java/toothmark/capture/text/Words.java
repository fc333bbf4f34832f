package toothmark.capture.text;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** What headers and preambles call things, in the languages met most. */
final class Words {

  private static final Set<String> TIME =
      set(
          "time,times,t,zeit,temps,tiempo,tempo,tid,tijd,aika,czas,cas,vreme,время,ido,"
              + "zaman,时间,時間,시간,timestamp,timestamps,zeitstempel,zeitpunkt,horodatage,uhrzeit,"
              + "epoch,unixtime,datetime,elapsed,second,seconds,sekunde,sekunden,seconde,secondes,segundos,sec,"
              + "milliseconds,microseconds,nanoseconds");
  private static final Set<String> PERIOD =
      set(
          "period,periods,interval,intervals,dt,delta,duration,durations,spacing,"
              + "periode,perioden,periodendauer,zahnperiode,zahnzeit,zahndauer,abstand,dauer,intervall,"
              + "intervalle,duree,periodo,durata,intervallo,intervalo,duracion,период");
  private static final Set<String> INDEX =
      set(
          "index,idx,no,nr,n,#,sample,samples,point,points,row,tooth,i,nummer,number,"
              + "num,numero,x,x axis,x-axis,count,punkt,abtastwert,messpunkt,zeile,echantillon,"
              + "indice,ligne,muestra,fila,campione,riga,amostra,linha,id");
  private static final Set<String> SEGMENT =
      set(
          "segment,seg,trigger,frame,buffer,burst,shot,waveform,record,acquisition,"
              + "aufnahme,messung");
  private static final Set<String> LEVEL =
      set(
          "level,state,polarity,edge,pegel,zustand,flanke,niveau,etat,front,nivel,"
              + "estado,stato,livello,direction,value,type,kind");

  private static final Set<String> HIGH =
      set("1,high,hi,h,rising,rise,r,up,on,true,↑,hoch,steigend,haut,montant,alto");
  private static final Set<String> LOW =
      set(
          "0,low,lo,l,falling,fall,f,down,off,false,↓,tief,niedrig,fallend,bas,descendant,"
              + "bajo,basso");

  private static final Set<String> SPEED =
      set(
          "rpm,engine speed,enginespeed,drehzahl,motordrehzahl,regime,revs,giri,frequency,frequenz");
  private static final Set<String> UNIT_OF_SPEED =
      set("rpm,rev/min,1/min,u/min,tr/min,r/min,min-1,hz");

  private static final Pattern SINCE_THE_LAST =
      Pattern.compile("\\b(since|from|after) (the )?(last|previous|prev)\\b");

  private Words() {}

  /** A set from words with commas between. */
  static Set<String> set(String words) {
    return Set.of(words.split(","));
  }

  /** Lower case, accents off, punctuation to single blanks. */
  static String normal(String text) {
    String t = text.strip().toLowerCase(Locale.ROOT);
    if (!isAscii(t)) {
      t = Normalizer.normalize(t, Normalizer.Form.NFKD);
    }
    StringBuilder b = new StringBuilder(t.length());
    for (int i = 0; i < t.length(); i++) {
      char c = t.charAt(i);
      boolean blank = c <= ' ' || c == '_' || c == '-' || c == '.' || c == '\'' || c == 0xa0;
      if (Character.getType(c) == Character.NON_SPACING_MARK) {
        continue;
      }
      if (!blank) {
        b.append(c == 'ß' ? "ss" : String.valueOf(c));
      } else if (b.length() > 0 && b.charAt(b.length() - 1) != ' ') {
        b.append(' ');
      }
    }
    return b.toString().strip();
  }

  private static boolean isAscii(String t) {
    for (int i = 0; i < t.length(); i++) {
      if (t.charAt(i) > 127) {
        return false;
      }
    }
    return true;
  }

  static boolean isTime(String name) {
    return firstOrLastIn(TIME, name);
  }

  static boolean isPeriod(String name) {
    String n = split(name);
    return firstOrLastIn(PERIOD, name)
        || n.equals("tooth time")
        || SINCE_THE_LAST.matcher(n).find();
  }

  /** Whether a column holds speeds, by its name or its unit. */
  static boolean isSpeed(String name, String unit) {
    return SPEED.contains(split(name)) || UNIT_OF_SPEED.contains(unit.toLowerCase(Locale.ROOT));
  }

  static boolean isIndex(String name) {
    return firstOrLastIn(INDEX, name);
  }

  static boolean isSegment(String name) {
    return firstOrLastIn(SEGMENT, name);
  }

  static boolean isLevel(String name) {
    return firstOrLastIn(LEVEL, name);
  }

  /** Whether a line between rows of numbers announces a new segment. */
  static boolean announcesSegment(String line) {
    for (String word : normal(line).split(" ", 6)) {
      if (SEGMENT.contains(strip(word))) {
        return true;
      }
    }
    return false;
  }

  private static String strip(String word) {
    int end = word.length();
    while (end > 0 && !Character.isLetter(word.charAt(end - 1))) {
      end--;
    }
    return word.substring(0, end);
  }

  /** The same, and {@code toothTime} is two words. */
  static String split(String name) {
    return normal(name.replaceAll("(?<=[a-z])(?=[A-Z][a-z])", " "));
  }

  private static boolean firstOrLastIn(Set<String> set, String name) {
    String n = split(name);
    if (set.contains(n)) {
      return true;
    }
    int first = n.indexOf(' ');
    return first > 0
        && (set.contains(n.substring(0, first))
            || set.contains(n.substring(n.lastIndexOf(' ') + 1)));
  }

  /**
   * A level in words.
   *
   * @return 1, 0, or -1 for any other text
   */
  static int level(String cell) {
    String n = normal(cell);
    return HIGH.contains(n) ? 1 : LOW.contains(n) ? 0 : -1;
  }

  /**
   * The level that a name such as {@code high time} or {@code t_low} speaks of.
   *
   * @return 1, 0, or -1 where it speaks of none
   */
  static int levelOf(String name) {
    String n = split(name);
    int first = level(n.substring(0, Math.max(0, n.indexOf(' '))));
    int last = level(n.substring(n.lastIndexOf(' ') + 1));
    return first >= 0 ? first : last;
  }
}
