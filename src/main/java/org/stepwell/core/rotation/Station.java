package org.stepwell.core.rotation;

import org.stepwell.core.problem.Refused;

/**
 * A place where one group works during one rotation.
 *
 * @param name as the teacher calls it, 1 to 60 letters
 * @param materials what has to lie ready there, up to 500 letters; may be empty
 * @param adult who is there, up to 60 letters; empty when the children work by themselves
 */
public record Station(String name, String materials, String adult) {
    /**
     * Strips the texts.
     *
     * @throws Refused when one is too long or the name is missing
     */
    public Station {
        name = name.strip();
        materials = materials.strip();
        adult = adult.strip();
        if (name.isEmpty() || name.length() > 60 || materials.length() > 500 || adult.length() > 60) {
            throw new Refused("block.station");
        }
    }
}
