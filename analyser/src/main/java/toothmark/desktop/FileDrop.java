package toothmark.desktop;

import java.awt.Component;
import java.awt.Container;
import java.awt.datatransfer.DataFlavor;
import java.awt.datatransfer.UnsupportedFlavorException;
import java.awt.dnd.DropTarget;
import java.awt.event.ContainerAdapter;
import java.awt.event.ContainerEvent;
import java.awt.event.ContainerListener;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JFrame;
import javax.swing.TransferHandler;
import javax.swing.plaf.UIResource;

/** Takes files that are dropped anywhere on a window. */
final class FileDrop extends TransferHandler {

  private static final long serialVersionUID = 1L;

  private static final ContainerListener LATER =
      new ContainerAdapter() {
        @Override
        public void componentAdded(ContainerEvent e) {
          letThrough(e.getChild());
        }
      };

  private final transient Consumer<List<Path>> open;

  FileDrop(Consumer<List<Path>> open) {
    this.open = open;
  }

  /**
   * What is dropped on a part of the window, there now or added later, is dropped on the window.
   */
  void takeAllOver(JFrame frame) {
    frame.setTransferHandler(this);
    letThrough(frame.getRootPane());
  }

  /**
   * Texts and lists come with a drop target that refuses files; one that sleeps takes its place.
   */
  private static void letThrough(Component part) {
    if (part.getDropTarget() instanceof UIResource) {
      DropTarget asleep = new DropTarget();
      asleep.setActive(false);
      part.setDropTarget(asleep);
    }
    if (part instanceof Container all) {
      all.removeContainerListener(LATER); // what paints the rows of a list is added time and again
      all.addContainerListener(LATER);
      for (Component inner : all.getComponents()) {
        letThrough(inner);
      }
    }
  }

  @Override
  public boolean canImport(TransferSupport s) {
    return s.isDataFlavorSupported(DataFlavor.javaFileListFlavor);
  }

  @Override
  @SuppressWarnings("unchecked") // the flavour promises a list of files
  public boolean importData(TransferSupport s) {
    try {
      List<File> dropped =
          (List<File>) s.getTransferable().getTransferData(DataFlavor.javaFileListFlavor);
      open.accept(dropped.stream().map(File::toPath).toList());
      return true;
    } catch (UnsupportedFlavorException | IOException e) {
      return false;
    }
  }
}
