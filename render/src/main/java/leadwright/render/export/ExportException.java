package leadwright.render.export;

/**
 * A page or a drawing that this program wrote itself cannot be turned into a PDF or a picture. It is a fault of the
 * program, never of the user's files, and it ends the run: a document with an empty box where a figure belongs
 * would be taken for a complete one.
 */
public final class ExportException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public ExportException(String message) {
        super(message);
    }

    public ExportException(String message, Throwable cause) {
        super(message, cause);
    }
}
