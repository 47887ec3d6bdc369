-- Frames of plans that a school keeps to begin others from. No child is in them. Append only: a new name, or that it is no
-- longer offered, is a new version.

create table plan_template (
    district_id int not null references district,
    template_id uuid not null,
    version     int not null check (version > 0),
    school_id   uuid not null,
    name        text not null check (length(name) between 1 and 80),
    kind        text not null check (kind in ('support', 'extension')),
    skill       text not null check (length(skill) > 0),
    goal_step   int not null check (goal_step between 1 and 5),
    goal_share  int not null check (goal_share between 1 and 100),
    goal_weeks  int not null check (goal_weeks between 1 and 52),
    given_by    text not null check (length(given_by) between 1 and 120),
    per_week    int not null check (per_week between 1 and 10),
    minutes     int not null check (minutes between 5 and 90),
    review_weeks int not null check (review_weeks between 1 and 52),
    activity    text not null default '' check (length(activity) <= 2000),
    retired     boolean not null default false,
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, template_id, version),
    constraint plan_template_of_school foreign key (district_id, school_id) references school,
    constraint plan_template_by_adult foreign key (district_id, written_by) references adult
);
create index plan_template_by_school on plan_template (district_id, school_id);
comment on table plan_template is 'A version of a frame to begin plans from; the newest holds';
comment on column plan_template.district_id is 'District the row belongs to';
comment on column plan_template.template_id is 'Made here';
comment on column plan_template.version is '1 for the first';
comment on column plan_template.school_id is 'School that offers it';
comment on column plan_template.name is 'What the school calls it';
comment on column plan_template.kind is 'support or extension';
comment on column plan_template.skill is 'Code of the skill in focus';
comment on column plan_template.goal_step is 'Step to be shown without help';
comment on column plan_template.goal_share is 'Share of looks without help that should show it, percent';
comment on column plan_template.goal_weeks is 'Weeks from the first day to the day of the goal';
comment on column plan_template.given_by is 'Role of the adult who gives it, such as aide; no name';
comment on column plan_template.per_week is 'Sessions a school week';
comment on column plan_template.minutes is 'Minutes of a session';
comment on column plan_template.review_weeks is 'Weeks from the first day to the day to look at the plan again';
comment on column plan_template.activity is 'What is done';
comment on column plan_template.retired is 'No longer offered';
comment on column plan_template.written_by is 'Who wrote it';
comment on column plan_template.written_at is 'When';
call guard('plan_template', true);
