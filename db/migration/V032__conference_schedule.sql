-- The schedule of talks with parents. Append only: a change is a new version with all its slots.

create table conference_schedule (
    district_id int not null references district,
    schedule_id uuid not null default gen_random_uuid(),
    class_id    uuid not null,
    version     int not null check (version > 0),
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, schedule_id),
    constraint conference_schedule_version unique (district_id, class_id, version),
    constraint conference_schedule_of_class foreign key (district_id, class_id) references classroom,
    constraint conference_schedule_by_adult foreign key (district_id, written_by) references adult
);
comment on table conference_schedule is 'A version of the schedule of talks of a class; the newest holds';
comment on column conference_schedule.district_id is 'District the row belongs to';
comment on column conference_schedule.schedule_id is 'Made here';
comment on column conference_schedule.class_id is 'The class';
comment on column conference_schedule.version is '1 for the first of the class';
comment on column conference_schedule.written_by is 'Who wrote it';
comment on column conference_schedule.written_at is 'When';
call guard('conference_schedule', true);

create table conference_slot (
    district_id int not null references district,
    schedule_id uuid not null,
    place       int not null check (place > 0),
    on_day      date not null,
    starts_at   time not null,
    minutes     int not null check (minutes between 5 and 90),
    pause       boolean not null,
    child_id    uuid,
    household   int not null default 1 check (household in (1, 2)),
    language    text not null default 'en' check (language in ('en', 'es')),
    primary key (district_id, schedule_id, place),
    constraint conference_slot_of_schedule foreign key (district_id, schedule_id) references conference_schedule,
    constraint conference_slot_for_child foreign key (district_id, child_id) references child,
    constraint conference_slot_pause_is_nobodys check (not pause or child_id is null)
);
comment on table conference_slot is 'A time for one talk, or a break';
comment on column conference_slot.district_id is 'District the row belongs to';
comment on column conference_slot.schedule_id is 'The version it stands in';
comment on column conference_slot.place is '1 for the first in the order of time';
comment on column conference_slot.on_day is 'School day';
comment on column conference_slot.starts_at is 'Time of the school''s clock';
comment on column conference_slot.minutes is 'How long';
comment on column conference_slot.pause is 'A break of the adult';
comment on column conference_slot.child_id is 'Whose parents come; none while it is free';
comment on column conference_slot.household is '1 or 2: parents who live apart come at two times and get two copies';
comment on column conference_slot.language is 'Language of this household''s copy of the note: en or es';
call guard('conference_slot', true);

create table conference_arrival (
    district_id int not null references district,
    arrival_id  uuid not null default gen_random_uuid(),
    child_id    uuid not null,
    on_day      date not null,
    household   int not null check (household in (1, 2)),
    outcome     text not null check (outcome in ('came', 'no_show', 'open')),
    recorded_by uuid not null,
    recorded_at timestamptz not null default clock_timestamp(),
    primary key (district_id, arrival_id),
    constraint conference_arrival_of_child foreign key (district_id, child_id) references child,
    constraint conference_arrival_by_adult foreign key (district_id, recorded_by) references adult
);
create index conference_arrival_by_child on conference_arrival (district_id, child_id, on_day);
comment on table conference_arrival is 'Whether a household came to its talk; the newest of a child, day and household holds';
comment on column conference_arrival.district_id is 'District the row belongs to';
comment on column conference_arrival.arrival_id is 'Made here';
comment on column conference_arrival.child_id is 'Whose parents';
comment on column conference_arrival.on_day is 'Day of the talk';
comment on column conference_arrival.household is '1 or 2';
comment on column conference_arrival.outcome is 'came, no_show, or open after a wrong tap';
comment on column conference_arrival.recorded_by is 'Who said so';
comment on column conference_arrival.recorded_at is 'When';
call guard('conference_arrival', true);
