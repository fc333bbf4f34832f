package toothmark.capture;

/** Kinds of file that are known by their first bytes but not read. */
enum FileKind {
  BZIP2("compressed with bzip2", "BZh"),
  SEVEN_ZIP("a 7z archive", "7z\u00bc\u00af"),
  MDF("an ASAM MDF file", "MDF     "),
  GZIP("packed twice, with gzip inside", "\u001f\u008b"),
  XZ("packed twice, with xz inside", "\u00fd7zXZ"),
  ZSTD("packed twice, with Zstandard inside", "(\u00b5/\u00fd"),
  ZIP("packed twice, with a ZIP archive inside", "PK\u0003\u0004"),
  EMPTY_ZIP("a ZIP archive with nothing in it", "PK\u0005\u0006"),
  TAR("a tar archive", "ustar", 257),
  AIFF("an AIFF sound file", "AIFF", 8),
  AU("an AU sound file", ".snd\0"),
  CAF("a CAF sound file", "caff\0"),
  WAVE64("a Wave64 sound file", "riff.\u0091"),
  FLAC("a FLAC sound file", "fLaC"),
  OGG("an Ogg sound file", "OggS"),
  MP3("an MP3 sound file", "ID3"),
  BIG_ENDIAN_SOUND("a sound file in big-endian order", "RIFX"),
  PDF("a PDF document", "%PDF"),
  PNG("a picture", "\u0089PNG"),
  JPEG("a picture", "\u00ff\u00d8\u00ff"),
  OLD_OFFICE("an old office document", "\u00d0\u00cf\u0011\u00e0");

  private final String text;
  private final String mark;
  private final int at;

  FileKind(String text, String mark) {
    this(text, mark, 0);
  }

  FileKind(String text, String mark, int at) {
    this.text = text;
    this.mark = mark;
    this.at = at;
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
    for (int i = 0; i < mark.length(); i++) {
      if (at + i >= head.length || (head[at + i] & 0xff) != mark.charAt(i)) {
        return false;
      }
    }
    return true;
  }
}
