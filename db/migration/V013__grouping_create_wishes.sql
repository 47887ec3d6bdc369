-- What adults ask of groups, until they take it back. Append only: the newest row of a wish holds.

create table grouping_wish (
    district_id    int not null references district,
    wish_id        uuid not null default gen_random_uuid(),
    class_id       uuid not null,
    kind           text not null check (kind in ('apart', 'together', 'away', 'second_adult')),
    child_id       uuid not null,
    other_child_id uuid,
    rotation       int check (rotation between 1 and 20),
    holds          boolean not null default true,
    recorded_by    uuid not null,
    recorded_at    timestamptz not null default clock_timestamp(),
    primary key (district_id, wish_id),
    constraint grouping_wish_of_class foreign key (district_id, class_id) references classroom,
    constraint grouping_wish_of_child foreign key (district_id, child_id) references child,
    constraint grouping_wish_of_other foreign key (district_id, other_child_id) references child,
    constraint grouping_wish_by_adult foreign key (district_id, recorded_by) references adult,
    constraint grouping_wish_pair check ((kind in ('apart', 'together')) = (other_child_id is not null)),
    constraint grouping_wish_time check ((kind = 'away') = (rotation is not null))
);
create index grouping_wish_by_class on grouping_wish (district_id, class_id, recorded_at);
create index grouping_wish_by_child on grouping_wish (district_id, child_id);
create index grouping_wish_by_other on grouping_wish (district_id, other_child_id);
comment on table grouping_wish is 'A wish about who sits where; without its reason, which is nobody else''s business';
comment on column grouping_wish.district_id is 'District the row belongs to';
comment on column grouping_wish.wish_id is 'Made here';
comment on column grouping_wish.class_id is 'The class';
comment on column grouping_wish.kind is 'apart, together, away in a rotation, or with the second adult';
comment on column grouping_wish.child_id is 'The child';
comment on column grouping_wish.other_child_id is 'The other child of a pair';
comment on column grouping_wish.rotation is 'Rotation in which the child is away, from 1';
comment on column grouping_wish.holds is 'False: taken back';
comment on column grouping_wish.recorded_by is 'Who wrote it down';
comment on column grouping_wish.recorded_at is 'When';
call guard('grouping_wish', true);
