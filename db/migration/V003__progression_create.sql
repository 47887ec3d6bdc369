-- Progressions as data, by version: an import of changed content is a new version.

create table progression (
    district_id    int not null references district,
    progression_id uuid not null default gen_random_uuid(),
    code           text not null check (length(code) between 1 and 100),
    version        int not null check (version >= 1),
    created_at     timestamptz not null default now(),
    primary key (district_id, progression_id),
    constraint progression_version_once unique (district_id, code, version)
);
comment on table progression is 'One version of a progression';
comment on column progression.district_id is 'District the row belongs to';
comment on column progression.progression_id is 'Made here';
comment on column progression.code is 'As in the file, such as tens-and-ones';
comment on column progression.version is 'Counts up with each import of other content; the highest holds';
comment on column progression.created_at is 'When it was imported';

create table skill (
    district_id    int not null references district,
    progression_id uuid not null,
    code           text not null check (length(code) between 1 and 50),
    position       int not null,
    title          text not null,
    standards      text[] not null default '{}',
    primary key (district_id, progression_id, code),
    constraint skill_of_progression foreign key (district_id, progression_id) references progression
);
comment on table skill is 'A skill of a progression version';
comment on column skill.district_id is 'District the row belongs to';
comment on column skill.progression_id is 'Progression version';
comment on column skill.code is 'Such as T05';
comment on column skill.position is 'Order in the file';
comment on column skill.title is 'Plain words';
comment on column skill.standards is 'Codes of public standards, as in the file';

create table prerequisite (
    district_id    int not null references district,
    progression_id uuid not null,
    skill          text not null,
    before_step    int not null check (before_step between 1 and 5),
    needs_skill    text not null,
    needs_step     int not null check (needs_step between 1 and 5),
    primary key (district_id, progression_id, skill, before_step, needs_skill),
    constraint prerequisite_of_skill foreign key (district_id, progression_id, skill) references skill,
    constraint prerequisite_needs_skill foreign key (district_id, progression_id, needs_skill) references skill
);
comment on table prerequisite is 'What is normally there before a step of a skill is expected; warns, never blocks';
comment on column prerequisite.district_id is 'District the row belongs to';
comment on column prerequisite.progression_id is 'Progression version';
comment on column prerequisite.skill is 'The skill that needs';
comment on column prerequisite.before_step is 'From which step of it; 1 = the skill as a whole';
comment on column prerequisite.needs_skill is 'The skill needed';
comment on column prerequisite.needs_step is 'The step needed there';

create table phrase (
    district_id    int not null references district,
    progression_id uuid not null,
    skill          text not null,
    kind           text not null check (kind in ('phrase', 'help', 'error')),
    code           text not null,
    step           int check (step between 1 and 5),
    language       text not null check (language in ('en', 'es')),
    position       int not null,
    text           text not null,
    phrase_id      uuid not null default gen_random_uuid(),
    primary key (district_id, phrase_id),
    constraint phrase_of_skill foreign key (district_id, progression_id, skill) references skill
);
create index phrase_by_skill on phrase (district_id, progression_id, skill);
comment on table phrase is 'Words to tap at the table, notes on help, error tags; two languages';
comment on column phrase.district_id is 'District the row belongs to';
comment on column phrase.progression_id is 'Progression version';
comment on column phrase.skill is 'Code of the skill';
comment on column phrase.kind is 'phrase, help or error';
comment on column phrase.code is 'snake_case code used as tag';
comment on column phrase.step is '1-5, or null where none applies';
comment on column phrase.language is 'en or es';
comment on column phrase.position is 'Order in the file';
comment on column phrase.text is 'What is read';
comment on column phrase.phrase_id is 'Made here';

create table unit (
    district_id      int not null references district,
    unit_id          uuid not null default gen_random_uuid(),
    class_id         uuid not null,
    progression_code text not null,
    title            text not null check (length(title) between 1 and 200),
    starts_on        date not null,
    created_at       timestamptz not null default now(),
    primary key (district_id, unit_id),
    constraint unit_of_class foreign key (district_id, class_id) references classroom
);
create index unit_by_class on unit (district_id, class_id, starts_on);
comment on table unit is 'A unit of lessons of one class; the one that started last is the one in hand';
comment on column unit.district_id is 'District the row belongs to';
comment on column unit.unit_id is 'Made here';
comment on column unit.class_id is 'The class';
comment on column unit.progression_code is 'Progression whose skills it uses';
comment on column unit.title is 'As the teacher calls it';
comment on column unit.starts_on is 'First day';
comment on column unit.created_at is 'When the row was written';

create table pacing (
    district_id   int not null references district,
    unit_id       uuid not null,
    revision      int not null check (revision >= 1),
    skill         text not null,
    due           date not null,
    taught_from   date,
    expected_step int check (expected_step between 1 and 5),
    created_at    timestamptz not null default now(),
    primary key (district_id, unit_id, revision, skill, due),
    constraint pacing_of_unit foreign key (district_id, unit_id) references unit
);
comment on table pacing is 'When a skill is due and at which step; a new revision stands in for the whole one before';
comment on column pacing.district_id is 'District the row belongs to';
comment on column pacing.unit_id is 'The unit';
comment on column pacing.revision is 'Counts up; the highest holds';
comment on column pacing.skill is 'Code of the skill, in a progression or not';
comment on column pacing.due is 'First day the row holds';
comment on column pacing.taught_from is 'First day the class worked on it; null = ten school days before its first due day';
comment on column pacing.expected_step is '1-5; null ends the expectation';
comment on column pacing.created_at is 'When the row was written';

create table school_break (
    district_id int not null references district,
    class_id    uuid not null,
    revision    int not null check (revision >= 1),
    from_on     date not null,
    to_on       date not null,
    reason      text not null default '',
    primary key (district_id, class_id, revision, from_on, to_on),
    constraint school_break_of_class foreign key (district_id, class_id) references classroom,
    constraint school_break_dates_in_order check (to_on >= from_on)
);
comment on table school_break is 'Days without school beside weekends; a new revision stands in for the one before';
comment on column school_break.district_id is 'District the row belongs to';
comment on column school_break.class_id is 'The class';
comment on column school_break.revision is 'Counts up; the highest holds';
comment on column school_break.from_on is 'First day without school';
comment on column school_break.to_on is 'Last day without school';
comment on column school_break.reason is 'In words';

call guard('progression', true);
call guard('skill', true);
call guard('prerequisite', true);
call guard('phrase', true);
call guard('unit', true);
call guard('pacing', true);
call guard('school_break', true);
