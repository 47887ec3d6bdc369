-- Talks with families: what they said, what was agreed, and when to look at it again. Append only.

create table family_talk (
    district_id int not null references district,
    talk_id     uuid not null,
    child_id    uuid not null,
    held_on     date not null,
    said        text not null default '' check (length(said) <= 4000),
    agreed      text not null default '' check (length(agreed) <= 4000),
    again_on    date,
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, talk_id),
    constraint family_talk_says_something check (said <> '' or agreed <> ''),
    constraint family_talk_of_child foreign key (district_id, child_id) references child,
    constraint family_talk_by_adult foreign key (district_id, written_by) references adult
);
create index family_talk_by_child on family_talk (district_id, child_id);
comment on table family_talk is 'A talk with the family of one child';
comment on column family_talk.district_id is 'District the row belongs to';
comment on column family_talk.talk_id is 'Made where it was written';
comment on column family_talk.child_id is 'The one child it was about';
comment on column family_talk.held_on is 'Day of the talk';
comment on column family_talk.said is 'What the family said, in the words of the adult who wrote it down';
comment on column family_talk.agreed is 'What was agreed';
comment on column family_talk.again_on is 'Day on which to look at what was agreed; null: none';
comment on column family_talk.written_by is 'Who wrote it down';
comment on column family_talk.written_at is 'When';
call guard('family_talk', true);

create table family_talk_step (
    district_id int not null references district,
    talk_id     uuid not null,
    step        int not null check (step > 0),
    again_on    date,
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, talk_id, step),
    constraint family_talk_step_of_talk foreign key (district_id, talk_id) references family_talk,
    constraint family_talk_step_by_adult foreign key (district_id, written_by) references adult
);
comment on table family_talk_step is 'What became of something agreed: moved to another day, or done';
comment on column family_talk_step.district_id is 'District the row belongs to';
comment on column family_talk_step.talk_id is 'The talk';
comment on column family_talk_step.step is '1 for the first after the talk';
comment on column family_talk_step.again_on is 'The new day; null: done';
comment on column family_talk_step.written_by is 'Who moved it or said it is done';
comment on column family_talk_step.written_at is 'When';
call guard('family_talk_step', true);
