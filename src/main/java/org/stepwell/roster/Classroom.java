package org.stepwell.roster;

import java.util.UUID;

/**
 * A class as an adult sees it.
 *
 * @param classId the class
 * @param name as the school calls it
 * @param grade as the school writes it
 */
public record Classroom(UUID classId, String name, String grade) {}
