-- What adults decided, with what they saw when they did. Append only.

create table tier_decision (
    district_id  int not null references district,
    decision_id  uuid not null default gen_random_uuid(),
    unit_id      uuid not null,
    child_id     uuid not null,
    as_of        date not null,
    from_tier    text not null check (from_tier in ('support', 'on_level', 'extension')),
    to_tier      text not null check (to_tier in ('support', 'on_level', 'extension')),
    choice       text not null check (choice in ('accept', 'keep', 'other', 'start')),
    suggested    text check (suggested in ('support', 'on_level', 'extension')),
    verdict      text check (verdict in ('move', 'stay', 'not_enough')),
    rules        text,
    reason       text not null default '' check (length(reason) <= 2000),
    evidence     jsonb not null default '{}',
    decided_by   uuid not null,
    decided_at   timestamptz not null default clock_timestamp(),
    primary key (district_id, decision_id),
    constraint tier_decision_of_unit foreign key (district_id, unit_id) references unit,
    constraint tier_decision_of_child foreign key (district_id, child_id) references child,
    constraint tier_decision_by_adult foreign key (district_id, decided_by) references adult,
    constraint tier_decision_other_says_why check (choice <> 'other' or length(reason) > 0)
);
create index tier_decision_by_child on tier_decision (district_id, child_id, unit_id, decided_at);
comment on table tier_decision is 'A teacher''s decision on the support a child gets in a unit, beside what was suggested';
comment on column tier_decision.district_id is 'District the row belongs to';
comment on column tier_decision.decision_id is 'Made here';
comment on column tier_decision.unit_id is 'The unit it holds in';
comment on column tier_decision.child_id is 'The child';
comment on column tier_decision.as_of is 'School day of the decision';
comment on column tier_decision.from_tier is 'In force before';
comment on column tier_decision.to_tier is 'In force from now on';
comment on column tier_decision.choice is 'accept, keep, other, or start for a tier taken over from elsewhere';
comment on column tier_decision.suggested is 'What the rules suggested; null when nothing was';
comment on column tier_decision.verdict is 'move, stay or not_enough; null when nothing was suggested';
comment on column tier_decision.rules is 'Name and version of the rules and parameters';
comment on column tier_decision.reason is 'The teacher''s words; required for another tier';
comment on column tier_decision.evidence is 'Conditions, counts and ids of the looks it rested on';
comment on column tier_decision.decided_by is 'Who decided';
comment on column tier_decision.decided_at is 'When';

create table concern (
    district_id int not null references district,
    concern_id  uuid not null default gen_random_uuid(),
    child_id    uuid not null,
    kind        text not null check (kind in ('concern', 'evaluation_request')),
    raised_on   date not null,
    words       text not null default '' check (length(words) <= 2000),
    recorded_by uuid not null,
    recorded_at timestamptz not null default clock_timestamp(),
    primary key (district_id, concern_id),
    constraint concern_of_child foreign key (district_id, child_id) references child,
    constraint concern_by_adult foreign key (district_id, recorded_by) references adult
);
create index concern_by_child on concern (district_id, child_id);
comment on table concern is 'A concern or a parent''s request for evaluation; only an adult records one';
comment on column concern.district_id is 'District the row belongs to';
comment on column concern.concern_id is 'Made here';
comment on column concern.child_id is 'The child';
comment on column concern.kind is 'concern or evaluation_request';
comment on column concern.raised_on is 'Day it was raised; duties count from here';
comment on column concern.words is 'As said';
comment on column concern.recorded_by is 'Who wrote it down';
comment on column concern.recorded_at is 'When';

create table dose (
    district_id      int not null references district,
    dose_id          uuid not null default gen_random_uuid(),
    unit_id          uuid not null,
    child_id         uuid not null,
    as_of            date not null,
    planned          int not null check (planned >= 0),
    given            int not null check (given >= 0),
    missed_by_school int not null default 0 check (missed_by_school >= 0),
    missed_by_child  int not null default 0 check (missed_by_child >= 0),
    recorded_by      uuid not null,
    recorded_at      timestamptz not null default clock_timestamp(),
    primary key (district_id, dose_id),
    constraint dose_of_unit foreign key (district_id, unit_id) references unit,
    constraint dose_of_child foreign key (district_id, child_id) references child,
    constraint dose_by_adult foreign key (district_id, recorded_by) references adult
);
create index dose_by_child on dose (district_id, child_id, unit_id, as_of);
comment on table dose is 'Sessions of extra help given against planned, as counted on a day; the newest row holds';
comment on column dose.district_id is 'District the row belongs to';
comment on column dose.dose_id is 'Made here';
comment on column dose.unit_id is 'The unit';
comment on column dose.child_id is 'The child';
comment on column dose.as_of is 'Day of the count';
comment on column dose.planned is 'Sessions planned so far';
comment on column dose.given is 'Sessions given';
comment on column dose.missed_by_school is 'Missed because an adult was away or the school had an event';
comment on column dose.missed_by_child is 'Missed because the child was away';
comment on column dose.recorded_by is 'Who wrote it down';
comment on column dose.recorded_at is 'When';
call guard('tier_decision', true);
call guard('concern', true);
call guard('dose', true);
