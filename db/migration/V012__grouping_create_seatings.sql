-- Who sits with whom from a day on. Append only: the newest row for a day holds, older ones stay to be read.

create table seating (
    district_id int not null references district,
    seating_id  uuid not null default gen_random_uuid(),
    class_id    uuid not null,
    for_on      date not null,
    kind        text not null check (kind in ('groups', 'start', 'day')),
    groups      int not null check (groups between 1 and 100),
    saved_by    uuid not null,
    saved_at    timestamptz not null default clock_timestamp(),
    primary key (district_id, seating_id),
    constraint seating_of_class foreign key (district_id, class_id) references classroom,
    constraint seating_by_adult foreign key (district_id, saved_by) references adult
);
create index seating_by_class on seating (district_id, class_id, for_on, saved_at);
comment on table seating is 'Groups of a class as an adult saved them; read by adults of the class';
comment on column seating.district_id is 'District the row belongs to';
comment on column seating.seating_id is 'Made here';
comment on column seating.class_id is 'The class';
comment on column seating.for_on is 'First day it holds; kind day: the only one';
comment on column seating.kind is 'groups: until the next; start: mixed groups of the first weeks; day: changed for one day';
comment on column seating.groups is 'How many groups';
comment on column seating.saved_by is 'Who saved it';
comment on column seating.saved_at is 'When';
call guard('seating', true);

create table seating_group (
    district_id  int not null references district,
    seating_id   uuid not null,
    group_no     int not null check (group_no between 1 and 100),
    skill        text check (length(skill) <= 100),
    number       text not null default '' check (length(number) <= 100),
    second_adult boolean not null default false,
    primary key (district_id, seating_id, group_no),
    constraint seating_group_of_seating foreign key (district_id, seating_id) references seating
);
comment on table seating_group is 'What one group works on; nothing about a child';
comment on column seating_group.district_id is 'District the row belongs to';
comment on column seating_group.seating_id is 'The groups it is one of';
comment on column seating_group.group_no is 'Number of the group, from 1';
comment on column seating_group.skill is 'Code of the skill most of them work on; null when not known';
comment on column seating_group.number is 'Number or task to offer, in the adult''s words; may be empty';
comment on column seating_group.second_adult is 'Whether a second adult meets this group';
call guard('seating_group', true);

create table seating_place (
    district_id int not null references district,
    seating_id  uuid not null,
    child_id    uuid not null,
    group_no    int not null check (group_no between 1 and 100),
    pinned      boolean not null default false,
    reason      text not null default '' check (length(reason) <= 1000),
    primary key (district_id, seating_id, child_id),
    constraint seating_place_of_seating foreign key (district_id, seating_id) references seating,
    constraint seating_place_of_child foreign key (district_id, child_id) references child
);
create index seating_place_by_child on seating_place (district_id, child_id);
comment on table seating_place is 'In which group a child sits, and why';
comment on column seating_place.district_id is 'District the row belongs to';
comment on column seating_place.seating_id is 'The groups';
comment on column seating_place.child_id is 'The child';
comment on column seating_place.group_no is 'Number of the group, from 1';
comment on column seating_place.pinned is 'Whether the adult fixed the place';
comment on column seating_place.reason is 'Why, as it stood when it was saved; names no other child and no tier';
call guard('seating_place', true);
