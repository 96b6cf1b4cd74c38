package leadwright.catalog.device;

import java.util.Optional;

/**
 * An external supply adapter, tested with its device by its own class.
 */
public record ExternalAdapter(Protection protection, FunctionalEarth functionalEarth, Optional<String> name) {}
