package leadwright.render.export;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The style rules of one drawing. Of CSS only what drawings need: selectors made of element names, classes and
 * ids, joined by blanks (descendant) and commas. A rule in the drawing's own {@code <style>} with any other selector
 * is refused; among the rules that reach the drawing from the page around it, such rules are left out.
 */
final class SvgRules {

    private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/", Pattern.DOTALL);
    private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)\\}");
    private static final Pattern COMPOUND = Pattern.compile("(\\*|[A-Za-z][\\w-]*)?((?:[.#][\\w-]+)*)");
    private static final Pattern PART = Pattern.compile("([.#])([\\w-]+)");

    /** One simple selector such as {@code text.pin}; the empty name stands for any element. */
    private record Compound(String name, Set<String> classes, Set<String> ids) {
        boolean matches(Element element, Set<String> elementClasses) {
            return (name.isEmpty() || name.equals(localName(element)))
                    && elementClasses.containsAll(classes)
                    && (ids.isEmpty() || ids.equals(Set.of(element.getAttribute("id"))));
        }
    }

    private record Rule(List<Compound> path, int weight, Map<String, String> declarations) {
        boolean matches(Element element, Set<String> classes) {
            int last = path.size() - 1;
            if (!path.get(last).matches(element, classes)) {
                return false;
            }
            int wanted = last - 1;
            Node node = element.getParentNode();
            while (wanted >= 0 && node instanceof Element) {
                Element ancestor = (Element) node;
                if (path.get(wanted).matches(ancestor, classesOf(ancestor))) {
                    wanted--;
                }
                node = ancestor.getParentNode();
            }
            return wanted < 0;
        }
    }

    private final List<Rule> rules = new ArrayList<>();

    /**
     * Reads the rules of a page and of the drawing inside it; the drawing's come later and win ties.
     *
     * @throws ExportException when a rule of the drawing is beyond this reader
     */
    SvgRules(String ofPage, String ofDrawing) {
        read(ofPage, false);
        read(ofDrawing, true);
        // A stable sort: among rules of equal weight the later one stays later and so wins.
        rules.sort(Comparator.comparingInt(Rule::weight));
    }

    /** The declarations that apply to an element, the strongest having overwritten the weaker. */
    Map<String, String> of(Element element) {
        Set<String> classes = classesOf(element);
        Map<String, String> found = new LinkedHashMap<>();
        for (Rule rule : rules) {
            if (rule.matches(element, classes)) {
                found.putAll(rule.declarations());
            }
        }
        return found;
    }

    /** Splits {@code name: value; name: value} into a map in the order written. */
    static Map<String, String> declarations(String text) {
        Map<String, String> found = new LinkedHashMap<>();
        for (String declaration : text.split(";")) {
            int colon = declaration.indexOf(':');
            if (colon > 0) {
                found.put(
                        declaration.substring(0, colon).trim(),
                        declaration.substring(colon + 1).trim());
            }
        }
        return found;
    }

    static String localName(Element element) {
        String name = element.getTagName();
        return name.substring(name.indexOf(':') + 1);
    }

    private static Set<String> classesOf(Element element) {
        String names = element.getAttribute("class").trim();
        return names.isEmpty() ? Set.of() : Set.copyOf(List.of(names.split("\\s+")));
    }

    private void read(String css, boolean strict) {
        Matcher rule = RULE.matcher(COMMENT.matcher(css).replaceAll(" "));
        while (rule.find()) {
            Map<String, String> declarations = declarations(rule.group(2));
            for (String selector : rule.group(1).split(",")) {
                List<Compound> path = path(selector.trim());
                if (!path.isEmpty()) {
                    rules.add(new Rule(path, weight(path), declarations));
                } else if (strict) {
                    throw new ExportException("The drawing has a style rule of an unknown kind: " + selector.trim());
                }
            }
        }
    }

    /** The selector as simple selectors, outermost first; empty when it is of another kind. */
    private static List<Compound> path(String selector) {
        List<Compound> path = new ArrayList<>();
        for (String word : selector.split("\\s+")) {
            Matcher compound = COMPOUND.matcher(word);
            if (word.isEmpty() || !compound.matches()) {
                return List.of();
            }
            Set<String> classes = new java.util.TreeSet<>();
            Set<String> ids = new java.util.TreeSet<>();
            Matcher part = PART.matcher(compound.group(2));
            while (part.find()) {
                (part.group(1).equals(".") ? classes : ids).add(part.group(2));
            }
            String name = compound.group(1) == null || compound.group(1).equals("*") ? "" : compound.group(1);
            path.add(new Compound(name, classes, ids));
        }
        return path;
    }

    private static int weight(List<Compound> path) {
        int weight = 0;
        for (Compound compound : path) {
            weight += 10_000 * compound.ids().size()
                    + 100 * compound.classes().size()
                    + (compound.name().isEmpty() ? 0 : 1);
        }
        return weight;
    }
}
