package leadwright.catalog.device;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What makes a device a whole of several on one multiple socket-outlet.
 *
 * @param members their ids; parts and places of the whole begin with the id of their member
 * @param separatingTransformer whether the outlet stands behind a separating transformer
 */
public record SystemInfo(List<String> members, boolean separatingTransformer) {
    public SystemInfo {
        members = List.copyOf(members);
    }

    /** The member that a part or place of the whole belongs to. */
    public Optional<String> memberOf(String id) {
        return members.stream()
                .filter(member -> id.startsWith(member + "-"))
                .max(Comparator.comparingInt(String::length));
    }
}
