package leadwright.catalog.kit;

import java.util.Optional;

/**
 * Where the earth lead goes.
 *
 * @param atRest what it does during leakage readings; empty where the kit says nothing, which counts as earthed
 */
public record EarthJack(String socket, Optional<AtRest> atRest) {}
