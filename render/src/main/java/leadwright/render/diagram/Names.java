package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What stands in the boxes of kit items: the item's own name, or, where very many columns leave no room for names, a
 * letter that the line under the drawing explains.
 *
 * @param letters letter by kind of item; empty where names are written
 */
record Names(Map<String, String> letters) {
    static final Names WRITTEN = new Names(Map.of());

    Names {
        letters = Map.copyOf(letters);
    }

    /** A letter for every kind of item in these drawings. */
    static Names lettered(List<Columns.Drawn> all) {
        Map<String, String> letters = new LinkedHashMap<>();
        for (Columns.Drawn drawn : all) {
            for (Net.Line line : drawn.net().lines()) {
                line.items().forEach(item -> letter(letters, Net.kind(item)));
            }
            drawn.net().boxes().forEach(box -> letter(letters, Net.kind(box.id())));
        }
        return new Names(letters);
    }

    private static void letter(Map<String, String> letters, String kind) {
        int n = letters.size();
        String letter = (n < 26 ? "" : String.valueOf((char) ('a' + n / 26 - 1))) + (char) ('a' + n % 26);
        letters.putIfAbsent(kind, letter);
    }

    /** An item on a line, by its kind: like ones are equal. */
    String item(String item) {
        return letters.getOrDefault(Net.kind(item), Net.kind(item));
    }

    /** A fan-out with its number. */
    String box(String box) {
        String kind = Net.kind(box);
        return letters.getOrDefault(kind, kind) + box.substring(kind.length()).replace('/', ' ');
    }

    /** The letters of one drawing explained; nothing where names are written. */
    String key(Net net) {
        if (letters.isEmpty()) {
            return "";
        }
        List<String> words = new ArrayList<>();
        for (Net.Line line : net.lines()) {
            line.items().forEach(item -> words.add(item(item) + " " + Net.kind(item)));
        }
        net.boxes().forEach(box -> words.add(letters.get(Net.kind(box.id())) + " " + Net.kind(box.id())));
        return String.join(", ", words.stream().distinct().sorted().toList());
    }
}
