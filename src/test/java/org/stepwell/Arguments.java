package org.stepwell;

import java.lang.reflect.Parameter;
import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.stepwell.core.grouping.Wish;
import org.stepwell.core.pacing.SchoolCalendar;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.tier.RuleFile;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeNote;
import org.stepwell.roster.Invitations.Role;

/** Something sensible for each parameter of a service method, so that a call fails on its rights and on nothing else. */
final class Arguments {
    private static final Set<String> OF_CHILDREN = Set.of("children", "again");

    private final LocalDate today;

    Arguments(LocalDate today) {
        this.today = today;
    }

    Object[] of(Parameter[] parameters, World first, World rest) {
        Object[] all = new Object[parameters.length];
        for (int i = 0; i < all.length; i++) {
            World world = i == 0 ? first : rest;
            all[i] = OF_CHILDREN.contains(parameters[i].getName())
                    && Collection.class.isAssignableFrom(parameters[i].getType())
                    ? parameters[i].getType() == Set.class ? Set.of(world.id("childId")) : List.of(world.id("childId"))
                    : value(parameters[i].getType(), parameters[i].getName(), world);
        }
        return all;
    }

    private Object value(Class<?> type, String name, World world) {
        if (type == UUID.class) {
            return world.id(name);
        } else if (type == String.class) {
            return name.equals("schoolKey") || name.equals("child") ? world.schoolKey() : "x";
        } else if (type == LocalDate.class) {
            return today;
        } else if (type == LocalTime.class) {
            return LocalTime.of(9, 0);
        } else if (type == BlockPattern.class) {
            return World.block();
        } else if (type == int.class || type == Integer.class) {
            return 1;
        } else if (type == boolean.class) {
            return false;
        } else if (type == Role.class) {
            return Role.AIDE; // a teacher lets in no second teacher
        } else if (type.isEnum()) {
            return type == Language.class ? Language.ENGLISH : type.getEnumConstants()[0];
        } else if (Map.class.isAssignableFrom(type)) {
            return Map.of();
        } else if (Collection.class.isAssignableFrom(type)) {
            return type == Set.class ? Set.of() : List.of();
        } else if (type == byte[].class) {
            return new byte[0];
        } else if (type == RuleFile.class) {
            return RuleFile.shipped(RuleFile.DEFAULT);
        } else if (type == Wish.class) {
            return new Wish.AwayAt(world.schoolKey(), 1);
        } else if (type == HomeNote.class) {
            return new HomeNote(Language.ENGLISH, Map.of(), List.of());
        } else if (type == SchoolCalendar.class) {
            return new SchoolCalendar(List.of());
        } else if (type == Progression.class) {
            return new Progression("none", List.of(), List.of());
        } else if (type.isRecord()) {
            return made(type, world);
        }
        throw new AssertionError("say in Arguments what stands for " + type + " " + name);
    }

    private Object made(Class<?> type, World world) {
        RecordComponent[] parts = type.getRecordComponents();
        try {
            var constructor = type.getDeclaredConstructor(Arrays.stream(parts).map(RecordComponent::getType)
                    .toArray(Class<?>[]::new));
            constructor.setAccessible(true);
            return constructor.newInstance(Arrays.stream(parts).map(part -> value(part.getType(), part.getName(),
                    world)).toArray());
        } catch (ReflectiveOperationException failed) {
            throw new AssertionError("say in Arguments what stands for " + type, failed);
        }
    }
}
