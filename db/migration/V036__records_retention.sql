-- How long a school keeps each kind of record after a child has left, and proof of what went for it.

create table retention_period (
    district_id int not null references district,
    school_id   uuid not null,
    kind        text not null check (kind in ('looks', 'decisions', 'plans', 'family', 'sharing', 'child')),
    version     int not null check (version > 0),
    months      int check (months between 1 and 1200),
    set_by      uuid not null,
    set_at      timestamptz not null default clock_timestamp(),
    primary key (district_id, school_id, kind, version),
    constraint retention_period_of_school foreign key (district_id, school_id) references school,
    constraint retention_period_by_adult foreign key (district_id, set_by) references adult
);
comment on table retention_period is 'How long a school keeps a kind of record after the child''s last day; the highest version holds';
comment on column retention_period.district_id is 'District the row belongs to';
comment on column retention_period.school_id is 'The school';
comment on column retention_period.kind is 'looks, decisions, plans, family, sharing; child: the child itself with all that is left';
comment on column retention_period.version is '1 for the first; two adults cannot set the same';
comment on column retention_period.months is 'Whole months after the last day in any class; null: no period, a lead erases child by child';
comment on column retention_period.set_by is 'The lead who set it';
comment on column retention_period.set_at is 'When';
call guard('retention_period', true);

create table retention_run (
    district_id int not null references district,
    run_id      uuid not null default gen_random_uuid(),
    school_id   uuid not null,
    kind        text not null check (kind in ('looks', 'decisions', 'plans', 'family', 'sharing', 'child')),
    many        int not null check (many > 0),
    row_count   int not null check (row_count >= 0),
    ordered_by  uuid not null,
    ran_at      timestamptz not null default clock_timestamp(),
    primary key (district_id, run_id),
    constraint retention_run_of_school foreign key (district_id, school_id) references school,
    constraint retention_run_by_adult foreign key (district_id, ordered_by) references adult
);
create index retention_run_newest on retention_run (district_id, school_id, ran_at desc);
comment on table retention_run is 'Proof that records whose period was over were erased on the word of a lead; names no child';
comment on column retention_run.district_id is 'District the row belongs to';
comment on column retention_run.run_id is 'Made here';
comment on column retention_run.school_id is 'The school the children had left';
comment on column retention_run.kind is 'What was erased';
comment on column retention_run.many is 'Of how many children';
comment on column retention_run.row_count is 'Rows removed or rewritten';
comment on column retention_run.ordered_by is 'The lead who said so';
comment on column retention_run.ran_at is 'When';
call guard('retention_run', true);
revoke insert on retention_run from ${app_role};
grant insert on retention_run to ${eraser_role};
