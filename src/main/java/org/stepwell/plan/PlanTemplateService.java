package org.stepwell.plan;

import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Templates of plans: the adults of a class write them, each for the whole of their school. */
@Service
@Transactional
public class PlanTemplateService {
    private static final int LONGEST_NAME = 80;
    private static final int LONGEST_ROLE = 120;

    private final PlanTemplateStore store;
    private final PlanService plans;
    private final RosterService roster;
    private final Access access;
    private final CurrentAdult current;

    PlanTemplateService(PlanTemplateStore store, PlanService plans, RosterService roster, Access access,
            CurrentAdult current) {
        this.store = store;
        this.plans = plans;
        this.roster = roster;
        this.access = access;
        this.current = current;
    }

    /** Templates this adult's school offers, by name; none for who writes no plans. */
    @Transactional(readOnly = true)
    public List<PlanTemplate> templates() {
        return access.classes().isEmpty() ? List.of() : store.offered(current.get().schoolId());
    }

    /**
     * Keeps the frame of a plan: skill, goal, sessions, minutes and activity as they hold today. Neither the child nor where
     * it stands nor the adult's name goes along.
     *
     * @param name what the school will call it
     * @param role who gives such help, in place of the adult's name
     * @throws Refused when name or role is missing or too long, the name is taken, or a child's name stands in the words
     * @throws NotVisible when the adult may not write plans of the child
     */
    public UUID save(UUID childId, UUID planId, String name, String role) {
        access.requireClass(roster.child(childId).classId());
        Plan plan = plans.plans(childId).stream().filter(p -> p.planId().equals(planId)).findFirst()
                .orElseThrow(NotVisible::new);
        PlanTemplate template = PlanTemplate.of(UUID.randomUUID(), named(name), role.strip(), plan.support(),
                plan.on(current.today()));
        if (template.role().isEmpty() || template.role().length() > LONGEST_ROLE) {
            throw new Refused("template.role", LONGEST_ROLE + "");
        }
        noChild(template, childId);
        SignedIn adult = current.get();
        store.add(adult.districtId(), adult.schoolId(), template, false, adult.adultId());
        return template.templateId();
    }

    /**
     * Gives a template another name.
     *
     * @param version the newest the adult has seen, so that two do not rename past each other
     * @throws Refused when the name is missing, too long or taken, holds a child's name, or somebody else was first
     * @throws NotVisible when the adult's school offers no such template
     */
    public void rename(UUID templateId, int version, String name) {
        PlanTemplate template = find(templateId);
        PlanTemplate other = template.called(named(name));
        roster.children().stream().map(ChildRow::childId).findFirst().ifPresent(child -> noChild(other, child));
        add(template, version, other, false);
    }

    /**
     * Offers a template no longer; plans begun from it stay as they are.
     *
     * @param version the newest the adult has seen
     * @throws Refused when somebody else changed it meanwhile
     * @throws NotVisible when the adult's school offers no such template
     */
    public void retire(UUID templateId, int version) {
        PlanTemplate template = find(templateId);
        add(template, version, template.called(template.name()), true);
    }

    private PlanTemplate find(UUID templateId) {
        return templates().stream().filter(t -> t.templateId().equals(templateId)).findFirst()
                .orElseThrow(NotVisible::new);
    }

    private void add(PlanTemplate seen, int version, PlanTemplate next, boolean retired) {
        SignedIn adult = current.get();
        if (seen.version() != version || !store.add(adult.districtId(), adult.schoolId(), next, retired, adult.adultId())) {
            throw new Refused("template.meanwhile");
        }
    }

    private String named(String name) {
        String plain = name.strip();
        if (plain.isEmpty() || plain.length() > LONGEST_NAME) {
            throw new Refused("template.name", LONGEST_NAME + "");
        }
        if (store.offered(current.get().schoolId()).stream().anyMatch(t -> t.name().equalsIgnoreCase(plain))) {
            throw new Refused("template.taken", plain);
        }
        return plain;
    }

    /** By whole words with a capital as names have it, so that "will" is a word and "Will" a child. */
    private void noChild(PlanTemplate template, UUID childId) {
        String words = template.name() + "\n" + template.role() + "\n" + template.activity();
        Stream<String> seen = roster.children().stream().flatMap(c -> Stream.of(c.label(), c.givenName(), c.familyName()));
        Stream.concat(roster.otherNames(childId).stream(), seen).filter(name -> !name.isBlank())
                .filter(name -> Pattern.compile("(?<![\\p{L}\\p{N}])" + Pattern.quote(name) + "(?![\\p{L}\\p{N}])")
                        .matcher(words).find())
                .findFirst().ifPresent(name -> {
                    throw new Refused("template.child", name);
                });
    }
}
