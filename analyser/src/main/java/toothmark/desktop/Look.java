package toothmark.desktop;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Font;
import java.awt.GraphicsEnvironment;
import java.util.HashMap;
import java.util.Map;
import javax.swing.UIManager;
import javax.swing.plaf.FontUIResource;
import net.miginfocom.layout.PlatformDefaults;
import toothmark.chart.Ink;
import toothmark.chart.Lettering;

/** Light and dark: widgets and pictures in the same colours and the same type. */
final class Look {

  private static final double ORDINARY_SIZE = 12;

  /** The bundled face looks as large as the system's at this share of its size. */
  private static final double SHARE = 0.88;

  private static Ink ink = Ink.LIGHT;
  private static double enlarged = 1;

  private Look() {}

  /** Dresses all windows made from now on; those that are open are redressed. */
  static void wear(Ink next) {
    ink = next;
    GraphicsEnvironment here = GraphicsEnvironment.getLocalGraphicsEnvironment();
    here.registerFont(Lettering.regular(ORDINARY_SIZE));
    here.registerFont(Lettering.strong(ORDINARY_SIZE));
    FlatLaf.setGlobalExtraDefaults(defaults(next));
    UIManager.put("defaultFont", null);
    if (next == Ink.DARK) {
      FlatDarkLaf.setup();
    } else {
      FlatLightLaf.setup();
    }
    Font system = UIManager.getFont("Label.font");
    double size = Math.max(ORDINARY_SIZE, SHARE * system.getSize2D()) * enlarged;
    UIManager.put("defaultFont", new FontUIResource(Lettering.regular(size)));
    UIManager.put("semibold.font", new FontUIResource(Lettering.strong(size)));
    UIManager.put("TitledBorder.font", new FontUIResource(Lettering.strong(size)));
    PlatformDefaults.setLogicalPixelBase(PlatformDefaults.BASE_SCALE_FACTOR);
    // the look and feel scales layouts itself, in quarters
    float rest = (float) (size / ORDINARY_SIZE) / UIScale.getUserScaleFactor();
    PlatformDefaults.setHorizontalScaleFactor(rest);
    PlatformDefaults.setVerticalScaleFactor(rest);
  }

  /**
   * Sets by how much the type is larger than the system's, 0.75 to 2.5; heeded from the next wear.
   */
  static void enlarge(double times) {
    enlarged = Math.max(0.75, Math.min(2.5, times));
  }

  static double enlarged() {
    return enlarged;
  }

  static Ink ink() {
    return ink;
  }

  /** How much larger than ordinary the type is; pictures are drawn so much larger. */
  static double scale() {
    return UIManager.getFont("Label.font").getSize2D() / ORDINARY_SIZE;
  }

  static Font regular(double times) {
    return Lettering.regular(UIManager.getFont("Label.font").getSize2D() * times);
  }

  static Font strong(double times) {
    return Lettering.strong(UIManager.getFont("Label.font").getSize2D() * times);
  }

  static Color quiet() {
    return ink == Ink.LIGHT ? new Color(0x59636E) : new Color(0xA3ADB8);
  }

  private static Map<String, String> defaults(Ink ink) {
    Map<String, String> d = new HashMap<>();
    boolean light = ink == Ink.LIGHT;
    d.put("@background", light ? "#F4F5F7" : "#1E2227");
    d.put("@foreground", hex(ink.text()));
    d.put("@accentColor", light ? "#0072B2" : "#56B4E9");
    d.put("@componentBackground", light ? "#FFFFFF" : "#16191D");
    d.put("Component.focusWidth", "2");
    d.put("Component.arc", "4");
    d.put("Button.arc", "4");
    d.put("TabbedPane.tabHeight", "30");
    d.put("TabbedPane.showTabSeparators", "false");
    d.put("TabbedPane.tabInsets", "4,10,4,10");
    d.put("SplitPaneDivider.gripDotCount", "5");
    d.put("ScrollBar.width", "12");
    d.put("ToolTip.border", "4,6,4,6");
    return d;
  }

  private static String hex(Color c) {
    return String.format(java.util.Locale.ROOT, "#%06X", c.getRGB() & 0xFFFFFF);
  }
}
