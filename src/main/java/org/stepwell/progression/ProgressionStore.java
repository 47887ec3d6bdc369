package org.stepwell.progression;

import java.sql.Array;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Need;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.core.progression.Progression.Skill;

/** Progressions by version. */
@Repository
class ProgressionStore {
    private final JdbcClient jdbc;

    ProgressionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    record Version(UUID progressionId, int version) {}

    Optional<Version> newest(String code) {
        return jdbc.sql("select progression_id, version from progression where code = :code"
                + " order by version desc limit 1").param("code", code)
                .query((row, n) -> new Version(row.getObject(1, UUID.class), row.getInt(2))).optional();
    }

    /** Every progression of the district. */
    List<String> codes() {
        return jdbc.sql("select distinct code from progression order by code").query(String.class).list();
    }

    Optional<String> codeOfClass(UUID classId) {
        return jdbc.sql("select progression_code from unit where class_id = :class order by starts_on desc,"
                + " created_at desc limit 1").param("class", classId).query(String.class).optional();
    }

    Progression read(String code, UUID id) {
        Map<String, List<Need>> needs = jdbc.sql("select skill, before_step, needs_skill, needs_step from prerequisite"
                + " where progression_id = :id order by skill, before_step, needs_skill").param("id", id)
                .query((row, n) -> Map.entry(row.getString(1),
                        new Need(row.getInt(2), row.getString(3), row.getInt(4)))).list().stream()
                .collect(Collectors.groupingBy(Map.Entry::getKey,
                        Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
        List<Skill> skills = jdbc.sql("select code, title, standards from skill where progression_id = :id"
                + " order by position").param("id", id)
                .query((row, n) -> new Skill(row.getString(1), row.getString(2),
                        needs.getOrDefault(row.getString(1), List.of()), texts(row.getArray(3)))).list();
        List<Phrase> phrases = jdbc.sql("select skill, code, step, language, text, kind from phrase"
                + " where progression_id = :id order by position").param("id", id)
                .query((row, n) -> new Phrase(row.getString(1), row.getString(2), row.getObject(3, Integer.class),
                        row.getString(4), row.getString(5),
                        Phrase.Kind.valueOf(row.getString(6).toUpperCase(Locale.ROOT)))).list();
        return new Progression(code, skills, phrases);
    }

    private static List<String> texts(Array array) throws java.sql.SQLException {
        return Arrays.asList((String[]) array.getArray());
    }

    void add(int districtId, Progression progression, int version) {
        UUID id = UUID.randomUUID();
        jdbc.sql("insert into progression (district_id, progression_id, code, version) values (:d, :id, :code, :v)")
                .param("d", districtId).param("id", id).param("code", progression.code()).param("v", version).update();
        int position = 0;
        for (Skill skill : progression.skills()) {
            jdbc.sql("insert into skill (district_id, progression_id, code, position, title, standards)"
                    + " values (:d, :id, :code, :position, :title, :standards)")
                    .param("d", districtId).param("id", id).param("code", skill.code()).param("position", position++)
                    .param("title", skill.title()).param("standards", skill.standards().toArray(String[]::new))
                    .update();
        }
        for (Skill skill : progression.skills()) {
            for (Need need : skill.needs()) {
                jdbc.sql("insert into prerequisite (district_id, progression_id, skill, before_step, needs_skill,"
                        + " needs_step) values (:d, :id, :skill, :before, :needs, :step)")
                        .param("d", districtId).param("id", id).param("skill", skill.code())
                        .param("before", need.beforeStep()).param("needs", need.skill()).param("step", need.step())
                        .update();
            }
        }
        position = 0;
        for (Phrase phrase : progression.phrases()) {
            jdbc.sql("insert into phrase (district_id, progression_id, skill, kind, code, step, language, position,"
                    + " text) values (:d, :id, :skill, :kind, :code, :step, :language, :position, :text)")
                    .param("d", districtId).param("id", id).param("skill", phrase.skill())
                    .param("kind", phrase.kind().name().toLowerCase(Locale.ROOT)).param("code", phrase.code())
                    .param("step", phrase.step()).param("language", phrase.language())
                    .param("position", position++).param("text", phrase.text()).update();
        }
    }
}
