package leadwright.catalog.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.nodes.Tag;
import org.snakeyaml.engine.v2.resolver.ScalarResolver;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/**
 * From text to a tree of located nodes: YAML 1.2, of which JSON is a spelling. Built from the event stream, so that depth
 * is bounded before anything recurses; anchors, aliases, tags and merge keys are refused.
 */
final class Tree {

    /** A device file needs seven. */
    static final int DEEPEST = 40;

    private static final ScalarResolver CORE = new CoreSchema().getScalarResolver();

    private final Findings findings;
    private final Iterator<Event> events;

    private Tree(Iterator<Event> events, Findings findings) {
        this.events = events;
        this.findings = findings;
    }

    /** Ends the reading of a file whose problem is noted already. */
    private static final class Stopped extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Stopped() {
            super(null, null, false, false);
        }
    }

    /**
     * Reads the one document of a file.
     *
     * @return the tree, or empty when a noted problem left none; problems that leave a tree are noted too
     */
    static Optional<Node> read(byte[] bytes, Findings findings) {
        return read(bytes, TextCheck.MOST_BYTES, findings);
    }

    /** As above, with another size that is the most. */
    static Optional<Node> read(byte[] bytes, int most, Findings findings) {
        return TextCheck.text(bytes, most, findings).flatMap(text -> parse(text, most, findings));
    }

    private static Optional<Node> parse(String text, int most, Findings findings) {
        LoadSettings settings =
                LoadSettings.builder().setCodePointLimit(most).setUseMarks(true).build();
        try {
            Iterator<Event> events =
                    new Parse(settings).parseString(Tabs.inJson(text)).iterator();
            return new Tree(events, findings).document();
        } catch (Stopped e) {
            return Optional.empty();
        } catch (MarkedYamlEngineException e) {
            Place at = e.getProblemMark().or(e::getContextMark).map(Tree::place).orElse(Place.START);
            findings.problem(at, SyntaxMessages.of(e, text, at));
            return Optional.empty();
        } catch (RuntimeException e) {
            // The library lets some exceptions of its own workings through, for instance on the tag !%1E.
            findings.problem(Place.START, "this is not YAML or JSON that can be read: " + SyntaxMessages.plain(e));
            return Optional.empty();
        }
    }

    private Optional<Node> document() {
        Event first = events.next();
        while (first.getEventId() == Event.ID.StreamStart) {
            first = events.next();
        }
        if (!(first instanceof DocumentStartEvent)) {
            findings.problem(Place.START, "the file is empty; its first line is for instance 'leadwright: device/1'");
            return Optional.empty();
        }
        Node root = node(events.next(), 1);
        Event end = events.next();
        Event next = events.next();
        if (end.getEventId() != Event.ID.DocumentEnd || next.getEventId() != Event.ID.StreamEnd) {
            findings.problem(place(next), "a second document begins here; one file holds one");
        }
        return Optional.of(root);
    }

    private Node node(Event event, int depth) {
        Place at = place(event);
        if (event instanceof AliasEvent alias) {
            findings.problem(at, "the alias *" + alias.getAlias() + " is not read; write the value out");
            return new Node.Scalar(at, "", Node.Type.NOTHING);
        }
        if (event instanceof NodeEvent anchored && anchored.getAnchor().isPresent()) {
            findings.problem(at, "the anchor &" + anchored.getAnchor().get() + " is not read; take it out");
        }
        if (event instanceof ScalarEvent scalar) {
            return scalar(scalar, at);
        }
        if (event instanceof CollectionStartEvent collection) {
            if (depth > DEEPEST) {
                findings.problem(at, "nested more than " + DEEPEST + " deep; no file of this program needs that");
                throw new Stopped();
            }
            collection.getTag().ifPresent(tag -> refuseTag(tag, at));
            return event instanceof MappingStartEvent ? mapping(at, depth) : sequence(at, depth);
        }
        throw new IllegalStateException("unforeseen " + event.getEventId());
    }

    private void refuseTag(String tag, Place at) {
        findings.problem(at, "the tag " + Spelling.show(tag) + " is not read; take it out");
    }

    private Node scalar(ScalarEvent event, Place at) {
        event.getTag().ifPresent(tag -> refuseTag(tag, at));
        String text = event.getValue();
        text.codePoints()
                .filter(point -> !TextCheck.readable(point))
                .findFirst()
                .ifPresent(point -> findings.problem(
                        at, "holds the character " + Spelling.codePoint(point) + ", which is not text"));
        return new Node.Scalar(at, text, event.isPlain() ? type(CORE.resolve(text, true)) : Node.Type.TEXT);
    }

    private static Node.Type type(Tag tag) {
        if (tag.equals(Tag.INT)) {
            return Node.Type.WHOLE;
        }
        if (tag.equals(Tag.FLOAT)) {
            return Node.Type.DECIMAL;
        }
        if (tag.equals(Tag.BOOL)) {
            return Node.Type.YES_NO;
        }
        return tag.equals(Tag.NULL) ? Node.Type.NOTHING : Node.Type.TEXT;
    }

    private Node sequence(Place at, int depth) {
        List<Node> items = new ArrayList<>();
        for (Event event = events.next(); event.getEventId() != Event.ID.SequenceEnd; event = events.next()) {
            items.add(node(event, depth + 1));
        }
        return new Node.Sequence(at, items);
    }

    private Node mapping(Place at, int depth) {
        List<Node.Entry> entries = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Event event = events.next(); event.getEventId() != Event.ID.MappingEnd; event = events.next()) {
            Node key = node(event, depth + 1);
            Node value = node(events.next(), depth + 1);
            if (!(key instanceof Node.Scalar scalar) || scalar.type() == Node.Type.NOTHING) {
                findings.problem(key.at(), "a key is a single word");
            } else if (scalar.text().equals("<<")) {
                findings.problem(key.at(), "the merge key << is not read; write the values out");
            } else if (seen.containsKey(scalar.text())) {
                findings.problem(
                        key.at(),
                        "key " + Spelling.show(scalar.text()) + " stands twice, first in line "
                                + seen.get(scalar.text()).line() + "; keep one");
            } else {
                seen.put(scalar.text(), key.at());
                entries.add(new Node.Entry(scalar.text(), key.at(), value));
            }
        }
        return new Node.Mapping(at, entries);
    }

    private static Place place(Event event) {
        return event.getStartMark().map(Tree::place).orElse(Place.START);
    }

    private static Place place(Mark mark) {
        return new Place(mark.getLine() + 1, mark.getColumn() + 1);
    }
}
