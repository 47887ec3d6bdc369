-- What is true of the store as a whole and of no district.

create table store_mark (
    name    text primary key check (name in ('sample_removed')),
    made_at timestamptz not null default clock_timestamp()
);
comment on table store_mark is 'Facts of the store as a whole, of no district and about nobody';
comment on column store_mark.name is 'sample_removed: the sample class was taken out and is not put in again by itself';
comment on column store_mark.made_at is 'When';
grant select on store_mark to ${app_role};
grant select, insert on store_mark to ${eraser_role};
