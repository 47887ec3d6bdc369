package org.stepwell.core.check;

/**
 * An item of a unit check: it belongs to a skill and tests a step of it.
 *
 * @param code such as {@code i01}; names the item for ever, also when it moves on the paper
 * @param skill code of the skill
 * @param step 1-5, the step it tests
 * @param question what is asked, in the teacher's words; may be empty
 * @param answer what is right; may be empty
 */
public record CheckItem(String code, String skill, int step, String question, String answer) {
    /**
     * Checks what the store would refuse.
     *
     * @throws IllegalArgumentException saying what is wrong and what is accepted
     */
    public CheckItem {
        if (!code.matches("i[0-9]{1,3}")) {
            throw new IllegalArgumentException("item \"" + code + "\" is not named like i01");
        }
        if (skill.isBlank()) {
            throw new IllegalArgumentException("item " + code + " names no skill");
        }
        if (step < 1 || step > 5) {
            throw new IllegalArgumentException("item " + code + ": step " + step + " is not in 1-5");
        }
        if (question.length() > 300 || answer.length() > 100) {
            throw new IllegalArgumentException(
                    "item " + code + ": a question holds 300 letters, an answer 100; shorten it");
        }
    }
}
