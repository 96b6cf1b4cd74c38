package leadwright.render.sheet;

import java.util.List;
import leadwright.catalog.house.EarthWord;

/** The department's word for earth, set into this program's own phrases and never into text from a file. */
record Terms(EarthWord word) {

    private static final List<String> OURS =
            List.of("earth-referenced", "way to earth", "earth lead", "earth test", "from earth", "earth conductor");

    /** The phrase with every "earth" in the department's word; "unearthed" and "earthed" follow. */
    String say(String phrase) {
        return word == EarthWord.EARTH
                ? phrase
                : phrase.replace("earth", "ground").replace("Earth", "Ground").replace("EARTH", "GROUND");
    }

    /** As {@link #say} for the program's own phrases alone, in text that may also hold names from files. */
    String sayOurs(String text) {
        String said = text;
        for (String phrase : OURS) {
            said = said.replace(phrase, say(phrase));
        }
        return said;
    }
}
