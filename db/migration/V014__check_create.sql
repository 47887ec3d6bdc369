-- Unit checks: what is asked, what each child answered, what of it counts as evidence. Append only: a later row with a
-- higher number stands in for the one before, and the number a writer saw keeps two adults from overwriting each other.

create table unit_check (
    district_id int not null references district,
    check_id    uuid not null default gen_random_uuid(),
    unit_id     uuid not null,
    title       text not null check (length(title) between 1 and 200),
    held_on     date not null,
    retake_of   uuid,
    created_by  uuid not null,
    created_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, check_id),
    constraint unit_check_of_unit foreign key (district_id, unit_id) references unit,
    constraint unit_check_retake_of foreign key (district_id, retake_of) references unit_check,
    constraint unit_check_by_adult foreign key (district_id, created_by) references adult
);
create index unit_check_by_unit on unit_check (district_id, unit_id, held_on);
comment on table unit_check is 'A check of a unit, given to the class on one day';
comment on column unit_check.district_id is 'District the row belongs to';
comment on column unit_check.check_id is 'Made here';
comment on column unit_check.unit_id is 'The unit it checks';
comment on column unit_check.title is 'As the teacher calls it';
comment on column unit_check.held_on is 'School day on which the class sat it; a child who made it up has a day of its own';
comment on column unit_check.retake_of is 'The check whose missed skills are asked again; null = a check of its own';
comment on column unit_check.created_by is 'Who made it';
comment on column unit_check.created_at is 'When';

create table check_item (
    district_id int not null references district,
    check_id    uuid not null,
    revision    int not null check (revision >= 1),
    position    int not null check (position between 1 and 60),
    code        text not null check (code ~ '^i[0-9]{1,3}$'),
    skill       text not null check (length(skill) between 1 and 50),
    step        int not null check (step between 1 and 5),
    question    text not null default '' check (length(question) <= 300),
    answer      text not null default '' check (length(answer) <= 100),
    saved_by    uuid not null,
    saved_at    timestamptz not null default clock_timestamp(),
    primary key (district_id, check_id, revision, code),
    constraint check_item_place_once unique (district_id, check_id, revision, position),
    constraint check_item_of_check foreign key (district_id, check_id) references unit_check,
    constraint check_item_by_adult foreign key (district_id, saved_by) references adult
);
comment on table check_item is 'The blueprint of a check; a new revision stands in for the whole one before';
comment on column check_item.district_id is 'District the row belongs to';
comment on column check_item.check_id is 'The check';
comment on column check_item.revision is 'Counts up; the highest holds';
comment on column check_item.position is 'Order on the paper';
comment on column check_item.code is 'Such as i01; names the item for ever, also when it moves';
comment on column check_item.skill is 'Code of the skill the item belongs to';
comment on column check_item.step is 'Step the item tests: right is a look at it, wrong one at the step below';
comment on column check_item.question is 'What is asked, in the teacher''s words';
comment on column check_item.answer is 'What is right';
comment on column check_item.saved_by is 'Who saved the revision';
comment on column check_item.saved_at is 'When';

create table check_mark (
    district_id int not null references district,
    check_id    uuid not null,
    child_id    uuid not null,
    item        text not null,
    entry       int not null check (entry in (1, 2)),
    number      int not null check (number >= 1),
    mark        text not null check (mark in ('right', 'wrong', 'half', 'not_reached', 'cleared')),
    error       text check (length(error) <= 100),
    recorded_by uuid not null,
    recorded_at timestamptz not null default clock_timestamp(),
    primary key (district_id, check_id, child_id, item, entry, number),
    constraint check_mark_of_check foreign key (district_id, check_id) references unit_check,
    constraint check_mark_of_child foreign key (district_id, child_id) references child,
    constraint check_mark_by_adult foreign key (district_id, recorded_by) references adult,
    constraint check_mark_error_of_no_right check (error is null or mark in ('wrong', 'half'))
);
create index check_mark_by_child on check_mark (district_id, child_id);
comment on table check_mark is 'What a child answered to an item; the highest number of a cell holds';
comment on column check_mark.district_id is 'District the row belongs to';
comment on column check_mark.check_id is 'The check';
comment on column check_mark.child_id is 'The child';
comment on column check_mark.item is 'Code of the item';
comment on column check_mark.entry is '1 = the entry that counts; 2 = the second one, only compared with it';
comment on column check_mark.number is 'Counts up per cell; a writer takes the one after the number it saw';
comment on column check_mark.mark is 'right, wrong, half, not_reached (which is not wrong), or cleared';
comment on column check_mark.error is 'Error tag of the skill, when the adult named one';
comment on column check_mark.recorded_by is 'Who marked it';
comment on column check_mark.recorded_at is 'When';

create table check_sitting (
    district_id   int not null references district,
    check_id      uuid not null,
    child_id      uuid not null,
    number        int not null check (number >= 1),
    absent        boolean not null,
    sat_on        date,
    accommodation text not null default '' check (length(accommodation) <= 500),
    recorded_by   uuid not null,
    recorded_at   timestamptz not null default clock_timestamp(),
    primary key (district_id, check_id, child_id, number),
    constraint check_sitting_of_check foreign key (district_id, check_id) references unit_check,
    constraint check_sitting_of_child foreign key (district_id, child_id) references child,
    constraint check_sitting_by_adult foreign key (district_id, recorded_by) references adult,
    constraint check_sitting_not_both check (not absent or sat_on is null)
);
create index check_sitting_by_child on check_sitting (district_id, child_id);
comment on table check_sitting is 'How a child sat a check: absent, on another day, with which help; the highest number holds';
comment on column check_sitting.district_id is 'District the row belongs to';
comment on column check_sitting.check_id is 'The check';
comment on column check_sitting.child_id is 'The child';
comment on column check_sitting.number is 'Counts up per child';
comment on column check_sitting.absent is 'True: was not there and has not made it up';
comment on column check_sitting.sat_on is 'Day on which the child made it up; null = with the class';
comment on column check_sitting.accommodation is 'What the child may do, as an action and never a diagnosis';
comment on column check_sitting.recorded_by is 'Who wrote it down';
comment on column check_sitting.recorded_at is 'When';

create table check_counted (
    district_id int not null references district,
    check_id    uuid not null,
    counted_by  uuid not null,
    counted_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, check_id),
    constraint check_counted_of_check foreign key (district_id, check_id) references unit_check,
    constraint check_counted_by_adult foreign key (district_id, counted_by) references adult
);
comment on table check_counted is 'Checks whose marks an adult let count as evidence; later corrections follow by themselves';
comment on column check_counted.district_id is 'District the row belongs to';
comment on column check_counted.check_id is 'The check';
comment on column check_counted.counted_by is 'Who decided it';
comment on column check_counted.counted_at is 'When';

create table check_look (
    district_id int not null references district,
    check_id    uuid not null,
    child_id    uuid not null,
    item        text not null,
    number      int not null check (number >= 1),
    look_id     uuid not null,
    says        text not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, check_id, child_id, item, number),
    constraint check_look_is_a_look foreign key (district_id, look_id) references observation,
    constraint check_look_of_check foreign key (district_id, check_id) references unit_check,
    constraint check_look_of_child foreign key (district_id, child_id) references child
);
create index check_look_by_look on check_look (district_id, look_id);
create index check_look_by_child on check_look (district_id, child_id);
comment on table check_look is 'Which look speaks for a cell; the highest number holds';
comment on column check_look.district_id is 'District the row belongs to';
comment on column check_look.check_id is 'The check';
comment on column check_look.child_id is 'The child';
comment on column check_look.item is 'Code of the item';
comment on column check_look.number is 'Counts up per cell';
comment on column check_look.look_id is 'The look, or the one that takes it back';
comment on column check_look.says is 'Day, skill, step and tags of the look; empty when it was taken back';
comment on column check_look.written_at is 'When';

call guard('unit_check', true);
call guard('check_item', true);
call guard('check_mark', true);
call guard('check_sitting', true);
call guard('check_counted', true);
call guard('check_look', true);
