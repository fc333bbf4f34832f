package toothmark.capture;

/** Kinds of file that are known by their first bytes but not read. */
enum FileKind {
  BZIP2("compressed with bzip2", "BZh"),
  SEVEN_ZIP("a 7z archive", "7z\u00bc\u00af"),
  MDF("an ASAM MDF file", "MDF     "),
  FLAC("a FLAC sound file", "fLaC"),
  OGG("an Ogg sound file", "OggS"),
  MP3("an MP3 sound file", "ID3"),
  BIG_ENDIAN_SOUND("a sound file in big-endian order", "RIFX"),
  PDF("a PDF document", "%PDF"),
  PNG("a picture", "\u0089PNG"),
  JPEG("a picture", "\u00ff\u00d8\u00ff"),
  OLD_OFFICE("an old office document", "\u00d0\u00cf\u0011\u00e0");

  private final String text;
  private final String start;

  FileKind(String text, String start) {
    this.text = text;
    this.start = start;
  }

  /**
   * Refuses a file whose first bytes tell that it is no text.
   *
   * @throws UnsupportedCaptureException if the kind is known and not supported
   */
  static void refuse(String name, byte[] head) throws UnsupportedCaptureException {
    for (FileKind kind : values()) {
      if (kind.begins(head)) {
        throw new UnsupportedCaptureException(
            name
                + ": this is "
                + kind.text
                + ", which is not supported; unpack it, or export the capture as delimited text,"
                + " value change dump or WAV");
      }
    }
  }

  private boolean begins(byte[] head) {
    for (int i = 0; i < start.length(); i++) {
      if (i >= head.length || (head[i] & 0xff) != start.charAt(i)) {
        return false;
      }
    }
    return true;
  }
}
