package toothmark.capture.array;

import java.io.EOFException;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import toothmark.capture.StatedColumn;
import toothmark.capture.UnreadableCaptureException;
import toothmark.capture.store.ColumnWriter;
import us.hebi.matlab.mat.format.Mat5;
import us.hebi.matlab.mat.format.Mat5File;
import us.hebi.matlab.mat.types.Array;
import us.hebi.matlab.mat.types.MatFile;
import us.hebi.matlab.mat.types.Matrix;
import us.hebi.matlab.mat.types.Source;
import us.hebi.matlab.mat.types.Sources;
import us.hebi.matlab.mat.types.Struct;

/** Reads the matrices of a MATLAB file of level 5, those in structures too. */
final class MatlabReader {

  private final ArrayInput in;
  private final Variables into;

  MatlabReader(ArrayInput in, Variables into) {
    this.in = in;
    this.into = into;
  }

  void read() throws IOException, UnreadableCaptureException {
    try (MappedBuffers buffers = new MappedBuffers();
        Source source = Sources.wrapInputStream(in)) {
      Mat5File file = Mat5.newReader(source).setBufferAllocator(buffers).readMat();
      for (MatFile.Entry entry : file.getEntries()) {
        add(entry.getName(), entry.getValue());
      }
    } catch (IllegalArgumentException | IllegalStateException | IOException e) {
      boolean early = e instanceof EOFException || e.getCause() instanceof EOFException;
      String why = early ? "it ends early" : e.getMessage();
      throw in.broken("the MATLAB file cannot be read (" + why + ")", e);
    }
  }

  private void add(String name, Array value) throws IOException {
    if (value instanceof Struct struct && struct.getNumElements() == 1) {
      for (String field : struct.getFieldNames()) {
        add(field, struct.get(field));
      }
    } else if (value instanceof Matrix matrix && !matrix.isComplex()) {
      addMatrix(name, matrix);
    } else {
      into.leftOut(name, "it holds no real numbers");
    }
  }

  private void addMatrix(String name, Matrix matrix) throws IOException {
    List<Long> axes = Arrays.stream(matrix.getDimensions()).mapToObj(n -> (long) n).toList();
    Optional<Shape> shape = Shape.of(axes, true);
    StatedColumn about = StatedColumn.named(name, "");
    if (shape.isEmpty()) {
      into.leftOut(name, "its shape is " + axes);
    } else if (into.mayHave(about, shape.get().columns())) {
      fill(into.start(about, shape.get().columns()), shape.get(), matrix);
    }
  }

  private static void fill(List<ColumnWriter> writers, Shape shape, Matrix matrix)
      throws IOException {
    int rows = (int) shape.rows();
    for (int c = 0; c < writers.size(); c++) {
      int first = shape.byColumn() ? c * rows : c;
      int step = shape.byColumn() ? 1 : writers.size();
      for (int r = 0; r < rows; r++) {
        writers.get(c).add(matrix.getDouble(first + r * step));
      }
      writers.get(c).finish();
    }
  }
}
