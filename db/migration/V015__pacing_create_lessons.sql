-- Lessons of a unit, the choice of each day, and what is to be looked at or shown again at the table. Append only.

create table lesson (
    district_id int not null references district,
    unit_id     uuid not null,
    lesson_id   uuid not null,
    number      int not null check (number >= 1),
    position    int not null check (position between 1 and 200),
    title       text not null check (length(title) between 1 and 200),
    skills      text[] not null default '{}',
    step        int check (step between 1 and 5),
    materials   text not null default '' check (length(materials) <= 1000),
    points      text not null default '' check (length(points) <= 4000),
    days        int not null default 1 check (days between 1 and 20),
    removed     boolean not null default false,
    saved_by    uuid not null,
    saved_at    timestamptz not null default clock_timestamp(),
    primary key (district_id, unit_id, lesson_id, number),
    constraint lesson_of_unit foreign key (district_id, unit_id) references unit,
    constraint lesson_by_adult foreign key (district_id, saved_by) references adult
);
comment on table lesson is 'A lesson as the teacher writes it; the highest number of a lesson holds';
comment on column lesson.district_id is 'District the row belongs to';
comment on column lesson.unit_id is 'The unit';
comment on column lesson.lesson_id is 'Made with the lesson; stays when it is changed';
comment on column lesson.number is 'Counts up with every change; a writer takes the one after the number it saw';
comment on column lesson.position is 'Order in the unit; equal ones by when they were made';
comment on column lesson.title is 'As the teacher calls it';
comment on column lesson.skills is 'Codes of the skills it is about';
comment on column lesson.step is 'Step it works toward; null = the one expected by the pacing';
comment on column lesson.materials is 'What has to lie ready';
comment on column lesson.points is 'What to talk about';
comment on column lesson.days is 'School days planned for it';
comment on column lesson.removed is 'True: taken out of the unit';
comment on column lesson.saved_by is 'Who saved it';
comment on column lesson.saved_at is 'When';

create table lesson_choice (
    district_id int not null references district,
    unit_id     uuid not null,
    on_day      date not null,
    number      int not null check (number >= 1),
    lesson_id   uuid not null,
    choice      text not null check (choice in ('another_day', 'move_on', 'move_on_show_again')),
    children    uuid[] not null default '{}',
    has         int not null check (has >= 0),
    not_yet     int not null check (not_yet >= 0),
    not_seen    int not null check (not_seen >= 0),
    moved       int not null,
    decided_by  uuid not null,
    decided_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, unit_id, on_day, number),
    constraint lesson_choice_of_unit foreign key (district_id, unit_id) references unit,
    constraint lesson_choice_by_adult foreign key (district_id, decided_by) references adult
);
comment on table lesson_choice is 'What the teacher chose after a lesson; the highest number of a day holds';
comment on column lesson_choice.district_id is 'District the row belongs to';
comment on column lesson_choice.unit_id is 'The unit';
comment on column lesson_choice.on_day is 'School day of the lesson';
comment on column lesson_choice.number is 'Counts up when the choice of the day is changed';
comment on column lesson_choice.lesson_id is 'The lesson';
comment on column lesson_choice.choice is 'another_day, move_on or move_on_show_again';
comment on column lesson_choice.children is 'Children it is shown again to at the table';
comment on column lesson_choice.has is 'Children who had it when the teacher chose';
comment on column lesson_choice.not_yet is 'Children who had it not yet';
comment on column lesson_choice.not_seen is 'Children not seen so that it could be told';
comment on column lesson_choice.moved is 'School days by which the due dates to come were moved';
comment on column lesson_choice.decided_by is 'Who chose';
comment on column lesson_choice.decided_at is 'When';

create table table_task (
    district_id int not null references district,
    task_id     uuid not null default gen_random_uuid(),
    class_id    uuid not null,
    child_id    uuid not null,
    skill       text not null check (length(skill) between 1 and 50),
    why         text not null check (why in ('show_again', 'look_again', 'carry_over')),
    made_on     date not null,
    made_by     uuid not null,
    made_at     timestamptz not null default clock_timestamp(),
    primary key (district_id, task_id),
    constraint table_task_of_class foreign key (district_id, class_id) references classroom,
    constraint table_task_of_child foreign key (district_id, child_id) references child,
    constraint table_task_by_adult foreign key (district_id, made_by) references adult
);
create index table_task_by_class on table_task (district_id, class_id, made_on);
create index table_task_by_child on table_task (district_id, child_id);
comment on table table_task is 'A child to look at, or to show something again, at the table; a look at the skill since then ends it';
comment on column table_task.district_id is 'District the row belongs to';
comment on column table_task.task_id is 'Made here';
comment on column table_task.class_id is 'The class';
comment on column table_task.child_id is 'The child';
comment on column table_task.skill is 'Code of the skill';
comment on column table_task.why is 'show_again after a lesson, look_again before a unit, carry_over after a check';
comment on column table_task.made_on is 'School day it was made';
comment on column table_task.made_by is 'Who made it';
comment on column table_task.made_at is 'When';

call guard('lesson', true);
call guard('lesson_choice', true);
call guard('table_task', true);
