package leadwright.catalog.quantity;

/** A written quantity that cannot be read; the message is for the person who wrote it. */
public final class QuantityException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public QuantityException(String message) {
        super(message);
    }
}
