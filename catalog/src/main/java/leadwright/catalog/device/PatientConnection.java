package leadwright.catalog.device;

import java.util.Optional;

/**
 * A patient connection as the device file lists it, or as its electrode set expands.
 *
 * @param id unique in its function or part
 * @param terminal what the patient end is: a connector word
 */
public record PatientConnection(String id, String terminal, Optional<String> label) {}
