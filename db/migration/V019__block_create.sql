-- The math block: how it is set up, how each day ran. Append only: the newest version holds, older ones stay.

create table block_setup (
    district_id    int not null references district,
    setup_id       uuid not null default gen_random_uuid(),
    class_id       uuid not null,
    minutes        int not null check (minutes between 3 and 60),
    change_minutes int not null check (change_minutes between 0 and 15),
    starts_at      time not null,
    rotations      int[] not null check (array_length(rotations, 1) = 7),
    visits         int[] not null default '{}',
    saved_by       uuid not null,
    saved_at       timestamptz not null default clock_timestamp(),
    primary key (district_id, setup_id),
    constraint block_setup_of_class foreign key (district_id, class_id) references classroom,
    constraint block_setup_by_adult foreign key (district_id, saved_by) references adult
);
create index block_setup_by_class on block_setup (district_id, class_id, saved_at);
comment on table block_setup is 'How the block runs in a class, as an adult set it up; the newest holds';
comment on column block_setup.district_id is 'District the row belongs to';
comment on column block_setup.setup_id is 'Made here';
comment on column block_setup.class_id is 'The class';
comment on column block_setup.minutes is 'Length of a rotation';
comment on column block_setup.change_minutes is 'Minutes between two rotations';
comment on column block_setup.starts_at is 'When the block begins on a usual day, school time';
comment on column block_setup.rotations is 'Rotations from Monday to Sunday; 0 = no block';
comment on column block_setup.visits is 'Visits to the teacher table wished for in a week, from group 1 on; 0 or missing = every day';
comment on column block_setup.saved_by is 'Who saved it';
comment on column block_setup.saved_at is 'When';
call guard('block_setup', true);

create table block_station (
    district_id int not null references district,
    setup_id    uuid not null,
    position    int not null check (position between 0 and 11),
    name        text not null check (length(name) between 1 and 60),
    materials   text not null default '' check (length(materials) <= 500),
    adult       text not null default '' check (length(adult) <= 60),
    primary key (district_id, setup_id, position),
    constraint block_station_of_setup foreign key (district_id, setup_id) references block_setup
);
comment on table block_station is 'A place where a group works; position 0 is the teacher table';
comment on column block_station.district_id is 'District the row belongs to';
comment on column block_station.setup_id is 'The setup it belongs to';
comment on column block_station.position is 'Order; 0 is the teacher table';
comment on column block_station.name is 'As the teacher calls it';
comment on column block_station.materials is 'What has to lie ready';
comment on column block_station.adult is 'Who is there, as the teacher writes it; empty when nobody';
call guard('block_station', true);

create table block_day (
    district_id  int not null references district,
    block_day_id uuid not null default gen_random_uuid(),
    class_id     uuid not null,
    day          date not null,
    version      int not null check (version >= 1),
    setup_id     uuid not null,
    seating_id   uuid not null,
    how          text not null check (how in ('start', 'shift', 'shorten', 'drop')),
    lost_minutes int not null default 0 check (lost_minutes between 0 and 120),
    saved_by     uuid not null,
    saved_at     timestamptz not null default clock_timestamp(),
    primary key (district_id, block_day_id),
    constraint block_day_once unique (district_id, class_id, day, version),
    constraint block_day_of_class foreign key (district_id, class_id) references classroom,
    constraint block_day_of_setup foreign key (district_id, setup_id) references block_setup,
    constraint block_day_of_seating foreign key (district_id, seating_id) references seating,
    constraint block_day_by_adult foreign key (district_id, saved_by) references adult
);
comment on table block_day is 'The rotations of a day: version 1 as it began, later ones after time was lost';
comment on column block_day.district_id is 'District the row belongs to';
comment on column block_day.block_day_id is 'Made here';
comment on column block_day.class_id is 'The class';
comment on column block_day.day is 'School day';
comment on column block_day.version is 'From 1; the highest holds';
comment on column block_day.setup_id is 'Stations it was made from';
comment on column block_day.seating_id is 'Groups it was made for';
comment on column block_day.how is 'start, or what was done when time was lost';
comment on column block_day.lost_minutes is 'Minutes lost before this version';
comment on column block_day.saved_by is 'Who did it';
comment on column block_day.saved_at is 'When';
call guard('block_day', true);

create table block_turn (
    district_id  int not null references district,
    block_day_id uuid not null,
    turn_no      int not null check (turn_no between 1 and 24),
    starts_at    time not null,
    minutes      int not null check (minutes between 1 and 60),
    paused       int not null default 0 check (paused >= 0),
    stations     int[] not null,
    primary key (district_id, block_day_id, turn_no),
    constraint block_turn_of_day foreign key (district_id, block_day_id) references block_day
);
comment on table block_turn is 'One rotation of a version of a day';
comment on column block_turn.district_id is 'District the row belongs to';
comment on column block_turn.block_day_id is 'The version of the day';
comment on column block_turn.turn_no is 'From 1, in order of time';
comment on column block_turn.starts_at is 'When it begins, school time';
comment on column block_turn.minutes is 'Working minutes';
comment on column block_turn.paused is 'Minutes in which it stood still';
comment on column block_turn.stations is 'Position of the station of group 1, 2 and so on';
call guard('block_turn', true);

create table block_absence (
    district_id int not null references district,
    absence_id  uuid not null default gen_random_uuid(),
    class_id    uuid not null,
    child_id    uuid not null,
    day         date not null,
    holds       boolean not null,
    recorded_by uuid not null,
    recorded_at timestamptz not null default clock_timestamp(),
    primary key (district_id, absence_id),
    constraint block_absence_of_class foreign key (district_id, class_id) references classroom,
    constraint block_absence_of_child foreign key (district_id, child_id) references child,
    constraint block_absence_by_adult foreign key (district_id, recorded_by) references adult
);
create index block_absence_by_class on block_absence (district_id, class_id, day);
comment on table block_absence is 'Who was not there for a block; the newest row for a child and day holds';
comment on column block_absence.district_id is 'District the row belongs to';
comment on column block_absence.absence_id is 'Made here';
comment on column block_absence.class_id is 'The class';
comment on column block_absence.child_id is 'The child';
comment on column block_absence.day is 'School day';
comment on column block_absence.holds is 'Away; false takes it back';
comment on column block_absence.recorded_by is 'Who said so';
comment on column block_absence.recorded_at is 'When';
call guard('block_absence', true);
