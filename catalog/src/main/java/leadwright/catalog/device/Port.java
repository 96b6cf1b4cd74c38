package leadwright.catalog.device;

/**
 * A signal input or output, or a socket that a person can touch.
 *
 * @param terminal connector word or surface word; {@code metal} where the file says nothing
 */
public record Port(String id, String name, String terminal) {
    public Connection connection() {
        return new Connection("port." + id, Connection.Kind.PORT, id, id, terminal, java.util.Optional.empty());
    }
}
