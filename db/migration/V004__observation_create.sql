-- Looks. Append only: a correction is a new row that names the one it replaces.

create table observation (
    district_id     int not null references district,
    observation_id  uuid not null,
    child_id        uuid not null,
    class_id        uuid,
    skill           text,
    task            text check (length(task) <= 100),
    step            int check (step between 1 and 5),
    help            text not null check (help in ('none', 'cubes', 'prompt', 'modelled')),
    kind            text not null check (kind in ('table', 'exit_task', 'unit_check', 'specialist', 'other')),
    observer        text not null check (length(observer) between 1 and 200),
    recorded_by     uuid not null,
    tags            text[] not null default '{}',
    note            text check (length(note) <= 4000),
    observed_at     timestamptz not null,
    observed_on     date not null,
    replaces        uuid,
    withdrawn       boolean not null default false,
    clock_offset_ms bigint,
    waiting_since   timestamptz,
    recorded_at     timestamptz not null default clock_timestamp(),
    primary key (district_id, observation_id),
    constraint observation_of_child foreign key (district_id, child_id) references child,
    constraint observation_of_class foreign key (district_id, class_id) references classroom,
    constraint observation_by_adult foreign key (district_id, recorded_by) references adult,
    constraint observation_step_needs_skill check (step is null or skill is not null),
    constraint observation_withdrawn_names_one check (not withdrawn or replaces is not null)
);
create index observation_by_child on observation (district_id, child_id, observed_on);
create index observation_replaced on observation (district_id, replaces) where replaces is not null;
comment on table observation is 'One dated record that one adult saw one child use one strategy on one task';
comment on column observation.district_id is 'District the row belongs to';
comment on column observation.observation_id is 'Made where the look was made (UUIDv7); the same id is the same look for ever';
comment on column observation.child_id is 'The child seen';
comment on column observation.class_id is 'Class the child was in on that day; null when in none';
comment on column observation.skill is 'Code of the skill; null for a note alone';
comment on column observation.task is 'What was asked, often a number';
comment on column observation.step is '1-5; null for a note without a step';
comment on column observation.help is 'none, cubes, prompt or modelled';
comment on column observation.kind is 'Where it was seen';
comment on column observation.observer is 'Sign-in name of the adult who saw it, or a label from a file';
comment on column observation.recorded_by is 'Signed-in adult who sent or imported it';
comment on column observation.tags is 'snake_case codes';
comment on column observation.note is 'The adult''s own words; may be read by the parent';
comment on column observation.observed_at is 'When it was seen';
comment on column observation.observed_on is 'School day of the look in the school''s time zone';
comment on column observation.replaces is 'Look this row stands in for';
comment on column observation.withdrawn is 'True: the replaced look no longer counts and nothing takes its place';
comment on column observation.clock_offset_ms is 'Tablet clock minus server clock when measured';
comment on column observation.waiting_since is 'Set when the adult had lost access: waits for the class''s teacher and does not count';
comment on column observation.recorded_at is 'When the server stored it';
call guard('observation', true);
