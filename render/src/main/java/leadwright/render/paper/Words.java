package leadwright.render.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A run of text, some of it bold. */
public record Words(List<Span> spans) {

    /** Text in one look; it is data, whatever it says. */
    public record Span(String text, boolean bold) {
        public Span {
            text = Letters.legal(text);
        }
    }

    public static final Words NONE = new Words(List.of());

    public Words {
        spans = List.copyOf(spans);
    }

    public static Words of(String text) {
        return NONE.then(text);
    }

    public static Words strong(String text) {
        return NONE.bold(text);
    }

    public Words then(String text) {
        return with(new Span(text, false));
    }

    public Words bold(String text) {
        return with(new Span(text, true));
    }

    private Words with(Span span) {
        List<Span> longer = new ArrayList<>(spans);
        longer.add(span);
        return new Words(longer);
    }

    /** The text without its looks. */
    public String text() {
        return spans.stream().map(Span::text).collect(Collectors.joining());
    }
}
