package leadwright.catalog.read;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Findings;
import leadwright.catalog.text.Place;
import leadwright.catalog.text.Spelling;

/** Ids that share one space of names: each belongs to one thing, and references must find theirs. */
final class Ids {

    private final String thing;
    private final Findings findings;
    private final Map<String, Place> places = new LinkedHashMap<>();
    private boolean unread;

    /** @param thing what has such ids, for messages: {@code applied part} */
    Ids(String thing, Findings findings) {
        this.thing = thing;
        this.findings = findings;
    }

    /** Reads the id of a row and takes it. */
    String claim(Fields row) {
        String id = row.id("id");
        if (!id.isEmpty()) {
            Place first = places.putIfAbsent(id, row.at("id"));
            if (first != null) {
                findings.problem(
                        row.at("id"),
                        "id '" + id + "' stands twice, first in line " + first.line() + "; each " + thing
                                + " has an id of its own");
            }
        }
        return id;
    }

    /** The rows could not be read at all, which is said already: what refers to them is not held against the file. */
    void unread() {
        unread = true;
    }

    /** Notes a problem unless the word is a known id. */
    boolean refers(String word, Place at) {
        if (unread) {
            return false;
        }
        if (!places.containsKey(word)) {
            String instead = places.isEmpty() ? "the file lists none" : findings.instead(word, places.keySet());
            findings.problem(at, Spelling.show(word) + " is no " + thing + " of this file; " + instead);
            return false;
        }
        return true;
    }

    /** As {@link #refers}, for a reference that is an id of its own unless the key {@code stated} says otherwise. */
    boolean refersByDefault(String word, Place at, String stated) {
        if (unread) {
            return false;
        }
        if (!places.containsKey(word)) {
            findings.problem(
                    at,
                    Spelling.show(word) + " is no " + thing + " of this file; name one with '" + stated + "', "
                            + (places.isEmpty()
                                    ? "the file lists none"
                                    : "known: " + String.join(", ", places.keySet())));
            return false;
        }
        return true;
    }

    /** Takes an id that the file does not write itself, such as a wire of an electrode set. */
    void reserve(String id, Place at) {
        places.putIfAbsent(id, at);
    }

    /** Takes ids whose own rows are checked elsewhere. */
    void adopt(Collection<String> ids) {
        ids.stream().filter(id -> !id.isEmpty()).forEach(id -> places.putIfAbsent(id, Place.START));
    }

    boolean has(String word) {
        return places.containsKey(word);
    }

    Set<String> all() {
        return places.keySet();
    }
}
