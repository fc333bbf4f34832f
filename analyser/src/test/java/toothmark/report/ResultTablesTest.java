package toothmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import toothmark.chart.SampleRun;
import toothmark.examination.Examination;

class ResultTablesTest {

  @Test
  void writesTeethInTimeOrderWithNineDecimals() throws IOException {
    List<String> rows = rows(ResultTables::teeth);
    assertThat(rows.get(0)).isEqualTo("time_s,tooth,revolution,kind,angle_deg,rpm");
    assertThat(rows.get(1)).matches("0\\.000000000,1,0,seen,-?0\\.0000,10\\d\\d\\.\\d\\d");
    assertThat(rows).anyMatch(r -> r.matches("[0-9.]{11},12,24,missing,110\\.\\d{4},.*"));
    assertThat(rows).anyMatch(r -> r.matches("[0-9.]{11},,91,stray,19\\d\\.\\d{4},.*"));
  }

  @Test
  void writesSparksWithAdvanceAndGap() throws IOException {
    List<String> rows = rows(ResultTables::sparks);
    assertThat(rows.get(0)).isEqualTo("time_s,coil,dwell_ms,rpm,advance_deg,commanded_deg,gap_deg");
    String[] cells = rows.get(9).split(",");
    assertThat(cells[1]).isEqualTo("coil 1");
    assertThat(Double.parseDouble(cells[4]) - Double.parseDouble(cells[5]))
        .isCloseTo(Double.parseDouble(cells[6]), org.assertj.core.data.Offset.offset(1e-4));
  }

  @Test
  void writesReceiverEdgesAndSyncLossesWithTheirCause() throws IOException {
    assertThat(rows(ResultTables::receiverEdges)).hasSizeGreaterThan(1000).startsWith("time_s");
    List<String> rows = rows(ResultTables::syncLosses);
    assertThat(rows.get(0)).isEqualTo("time_s,revolution,teeth_counted,rpm,phase,cause");
    assertThat(rows.get(1)).matches("[0-9.]{11},24,12,\\d+\\.\\d\\d,running,damaged-tooth");
  }

  @Test
  void quotesTextOnlyWhereNeeded() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    CsvTable table = new CsvTable(out, "a,b,c");
    table.text("coil 1").text("a,\"b\"\nc").fixed(OptionalDouble.empty(), 3).endRow();
    table.text("x".repeat(100)).fixed(1e9, 9).whole(-7).endRow();
    table.flush();
    assertThat(out.toString(StandardCharsets.UTF_8))
        .isEqualTo(
            "a,b,c\ncoil 1,\"a,\"\"b\"\"\nc\",\n" + "x".repeat(100) + ",1000000000.000000000,-7\n");
  }

  private static List<String> rows(Table table) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    table.write(SampleRun.full(), out);
    return out.toString(StandardCharsets.UTF_8).lines().toList();
  }

  private interface Table {
    void write(Examination e, OutputStream out) throws IOException;
  }
}
