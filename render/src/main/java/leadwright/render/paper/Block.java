package leadwright.render.paper;

import java.util.List;

/** A piece of a document, one under the other. */
public sealed interface Block {

    /** Finds every kind of block at compile time. */
    interface Cases<R> {
        R heading(Heading heading);

        R paragraph(Paragraph paragraph);

        R notice(Notice notice);

        R items(Items items);

        R grid(Grid grid);

        R picture(Picture picture);

        R figure(Figure figure);
    }

    <R> R in(Cases<R> cases);

    /**
     * @param level 1 for sections, 2 for their parts, 3 for what is within a part
     * @param number {@code 4}, {@code 4.2}; empty where headings have none
     */
    record Heading(int level, String number, String text) implements Block {
        public Heading {
            text = Letters.legal(text);
        }

        /** Number and text as printed. */
        public String whole() {
            return number.isEmpty() ? text : number + "\u00a0\u00a0" + text;
        }

        @Override
        public <R> R in(Cases<R> cases) {
            return cases.heading(this);
        }
    }

    record Paragraph(Words words) implements Block {
        @Override
        public <R> R in(Cases<R> cases) {
            return cases.paragraph(this);
        }
    }

    /** Words in a frame: what must not be passed over. */
    record Notice(Words words) implements Block {
        @Override
        public <R> R in(Cases<R> cases) {
            return cases.notice(this);
        }
    }

    /** @param numbered whether the items are counted from 1 */
    record Items(List<Words> items, boolean numbered) implements Block {
        public Items {
            items = List.copyOf(items);
        }

        @Override
        public <R> R in(Cases<R> cases) {
            return cases.items(this);
        }
    }

    /**
     * A table; its head is repeated on every page that it goes on to.
     *
     * @param widths of the columns, in hundredths of the whole
     * @param tall whether its rows are to be written in
     */
    record Grid(List<String> head, List<Integer> widths, List<List<Words>> rows, boolean tall) implements Block {
        public Grid {
            head = head.stream().map(Letters::legal).toList();
            widths = List.copyOf(widths);
            rows = rows.stream().map(List::copyOf).toList();
            int columns = head.size();
            if (widths.size() != columns || rows.stream().anyMatch(row -> row.size() != columns)) {
                throw new IllegalArgumentException("a table whose rows have other columns than its head: " + head);
            }
            if (widths.stream().mapToInt(Integer::intValue).sum() != 100) {
                throw new IllegalArgumentException("widths that are not a hundred together: " + widths);
            }
        }

        @Override
        public <R> R in(Cases<R> cases) {
            return cases.grid(this);
        }
    }

    /**
     * A drawing on a landscape page of its own.
     *
     * @param svg well-formed, with a {@code viewBox} and a title
     * @param alt what it shows, for those who cannot see it
     */
    record Picture(String svg, String alt) implements Block {
        public Picture {
            alt = Letters.legal(alt);
        }

        @Override
        public <R> R in(Cases<R> cases) {
            return cases.picture(this);
        }
    }

    /**
     * A small drawing among the text, as wide as the text.
     *
     * @param svg well-formed, with a {@code viewBox} in millimetres and a title
     * @param alt what it shows, for those who cannot see it
     * @param caption under it
     */
    record Figure(String svg, String alt, Words caption) implements Block {
        public Figure {
            alt = Letters.legal(alt);
        }

        @Override
        public <R> R in(Cases<R> cases) {
            return cases.figure(this);
        }
    }
}
