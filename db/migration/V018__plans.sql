-- Plans of extra help (or of deeper work), the sessions given and missed, and how a plan ended. Append only: a change of
-- plan is a new phase, a wrong session is replaced by another row.

create table plan (
    district_id int not null references district,
    plan_id     uuid not null default gen_random_uuid(),
    child_id    uuid not null,
    kind        text not null check (kind in ('support', 'extension')),
    started_on  date not null,
    started_by  uuid not null,
    started_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, plan_id),
    constraint plan_of_child foreign key (district_id, child_id) references child,
    constraint plan_by_adult foreign key (district_id, started_by) references adult
);
create index plan_by_child on plan (district_id, child_id, started_on);
comment on table plan is 'Extra help or deeper work planned for one child';
comment on column plan.district_id is 'District the row belongs to';
comment on column plan.plan_id is 'Made here';
comment on column plan.child_id is 'The child';
comment on column plan.kind is 'support or extension';
comment on column plan.started_on is 'First day of the plan';
comment on column plan.started_by is 'Who wrote it';
comment on column plan.started_at is 'When it was written';

create table plan_phase (
    district_id int not null references district,
    plan_id     uuid not null,
    phase       int not null check (phase > 0),
    from_on     date not null,
    skill       text not null,
    goal_start  int not null check (goal_start between 1 and 5),
    goal_step   int not null check (goal_step between 1 and 5),
    goal_share  int not null check (goal_share between 1 and 100),
    goal_by     date not null,
    given_by    text not null check (length(given_by) between 1 and 120),
    per_week    int not null check (per_week between 1 and 10),
    minutes     int not null check (minutes between 5 and 90),
    review_on   date not null,
    activity    text not null default '' check (length(activity) <= 2000),
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, plan_id, phase),
    constraint plan_phase_of_plan foreign key (district_id, plan_id) references plan,
    constraint plan_phase_by_adult foreign key (district_id, written_by) references adult,
    constraint plan_phase_goal_lies_ahead check (goal_by > from_on)
);
comment on table plan_phase is 'What holds from a day on; a change of plan is another phase';
comment on column plan_phase.district_id is 'District the row belongs to';
comment on column plan_phase.plan_id is 'The plan';
comment on column plan_phase.phase is '1 for the first';
comment on column plan_phase.from_on is 'First day it holds';
comment on column plan_phase.skill is 'Code of the skill in focus';
comment on column plan_phase.goal_start is 'Step where the child stood';
comment on column plan_phase.goal_step is 'Step to be shown without help';
comment on column plan_phase.goal_share is 'Share of looks without help that should show it, percent';
comment on column plan_phase.goal_by is 'Day by which';
comment on column plan_phase.given_by is 'Name of the adult who gives it, as it stands in letters';
comment on column plan_phase.per_week is 'Sessions a school week';
comment on column plan_phase.minutes is 'Minutes of a session';
comment on column plan_phase.review_on is 'Day to look at the plan again';
comment on column plan_phase.activity is 'What is done';
comment on column plan_phase.written_by is 'Who wrote it';
comment on column plan_phase.written_at is 'When';

create table plan_session (
    district_id int not null references district,
    session_id  uuid not null,
    plan_id     uuid not null,
    held_on     date not null,
    outcome     text not null check (outcome in ('given', 'child_absent', 'adult_unavailable', 'school_event')),
    minutes     int not null check (minutes between 0 and 180),
    words       text not null default '' check (length(words) <= 2000),
    replaces    uuid,
    withdrawn   boolean not null default false,
    logged_by   uuid not null,
    logged_at   timestamptz not null default clock_timestamp(),
    primary key (district_id, session_id),
    constraint plan_session_of_plan foreign key (district_id, plan_id) references plan,
    constraint plan_session_replaces foreign key (district_id, replaces) references plan_session,
    constraint plan_session_by_adult foreign key (district_id, logged_by) references adult,
    constraint plan_session_withdraws_one check (not withdrawn or replaces is not null)
);
create index plan_session_by_plan on plan_session (district_id, plan_id, held_on);
comment on table plan_session is 'A session that was given, or missed for a reason';
comment on column plan_session.district_id is 'District the row belongs to';
comment on column plan_session.session_id is 'Made where it was logged, so that sending it again does nothing';
comment on column plan_session.plan_id is 'The plan';
comment on column plan_session.held_on is 'School day';
comment on column plan_session.outcome is 'given, or why it was missed: child_absent, adult_unavailable, school_event';
comment on column plan_session.minutes is 'Minutes given; 0 when missed';
comment on column plan_session.words is 'What was done';
comment on column plan_session.replaces is 'The row this one stands in for';
comment on column plan_session.withdrawn is 'The replaced row no longer counts and nothing takes its place';
comment on column plan_session.logged_by is 'Who logged it';
comment on column plan_session.logged_at is 'When';

create table plan_end (
    district_id int not null references district,
    plan_id     uuid not null,
    ended_on    date not null,
    outcome     text not null check (outcome in ('goal_met', 'faded', 'changed', 'more_help', 'left')),
    words       text not null default '' check (length(words) <= 2000),
    ended_by    uuid not null,
    ended_at    timestamptz not null default clock_timestamp(),
    primary key (district_id, plan_id),
    constraint plan_end_of_plan foreign key (district_id, plan_id) references plan,
    constraint plan_end_by_adult foreign key (district_id, ended_by) references adult
);
comment on table plan_end is 'How a plan ended';
comment on column plan_end.district_id is 'District the row belongs to';
comment on column plan_end.plan_id is 'The plan';
comment on column plan_end.ended_on is 'Last day';
comment on column plan_end.outcome is 'goal_met, faded, changed (another plan follows), more_help (asked for), left (the child left)';
comment on column plan_end.words is 'In the adult''s words';
comment on column plan_end.ended_by is 'Who ended it';
comment on column plan_end.ended_at is 'When';

call guard('plan', true);
call guard('plan_phase', true);
call guard('plan_session', true);
call guard('plan_end', true);
