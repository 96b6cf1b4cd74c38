package leadwright.render.sheet;

import leadwright.catalog.house.EarthWord;

/** The department's word for earth, set into this program's own phrases and never into text from a file. */
record Terms(EarthWord word) {

    /** The phrase with every "earth" in the department's word; "unearthed" and "earthed" follow. */
    String say(String phrase) {
        return word == EarthWord.EARTH
                ? phrase
                : phrase.replace("earth", "ground").replace("Earth", "Ground").replace("EARTH", "GROUND");
    }
}
