-- Who works here: districts, schools, adults, how they sign in.
-- Every table: district_id first in every key, row-level security forced, two roles besides the owner:
--   ${app_role}     the running server; may read and add, never change or remove facts
--   ${eraser_role}  the only one that may delete
-- A transaction says for which district it works by set_config('stepwell.district', ..., true).

create function current_district() returns int
    language sql stable parallel safe
    return nullif(current_setting('stepwell.district', true), '')::int;
comment on function current_district() is 'District of the running transaction; null when none was set, and then no row is visible';

create function refuse_change() returns trigger language plpgsql as $$
begin
    if tg_op = 'DELETE' and current_user = '${eraser_role}' then
        return old;
    end if;
    raise exception 'rows of % are never changed or removed: write a new row instead', tg_table_name
        using errcode = 'restrict_violation';
end $$;
comment on function refuse_change() is 'Keeps facts as they were written; only the erasure role may delete';

create procedure guard(t regclass, facts boolean) language plpgsql as $$
begin
    execute format('alter table %s enable row level security', t);
    execute format('alter table %s force row level security', t);
    execute format('create policy of_district on %s for all to ${app_role}
        using (district_id = current_district()) with check (district_id = current_district())', t);
    execute format('create policy of_eraser on %s for all to ${eraser_role} using (true)', t);
    execute format('grant select, insert on %s to ${app_role}', t);
    execute format('grant select, delete on %s to ${eraser_role}', t);
    if facts then
        execute format('create trigger kept_as_written before update or delete on %s
            for each row execute function refuse_change()', t);
    end if;
end $$;
comment on procedure guard(regclass, boolean) is 'Puts district security and grants on a new table; facts are also kept from change by a trigger';

create table district (
    district_id int primary key,
    name        text not null check (length(name) between 1 and 200),
    sample      boolean not null default false,
    created_at  timestamptz not null default now()
);
comment on table district is 'The widest wall between records: a district, or one teacher alone';
comment on column district.district_id is 'Leads every key of every other table';
comment on column district.name is 'Shown in the settings only';
comment on column district.sample is 'True for the invented sample class, which can be removed without trace';
comment on column district.created_at is 'When the row was written';
call guard('district', false);

create table school (
    district_id int not null references district,
    school_id   uuid not null default gen_random_uuid(),
    name        text not null check (length(name) between 1 and 200),
    time_zone   text not null check (length(time_zone) between 1 and 64),
    created_at  timestamptz not null default now(),
    primary key (district_id, school_id)
);
comment on table school is 'A school; its time zone decides on which day a look was made';
comment on column school.district_id is 'District the row belongs to';
comment on column school.school_id is 'Made here';
comment on column school.name is 'As on the school''s door';
comment on column school.time_zone is 'IANA name such as America/Chicago; required';
comment on column school.created_at is 'When the row was written';
call guard('school', false);

create table adult (
    district_id int not null references district,
    adult_id    uuid not null default gen_random_uuid(),
    school_id   uuid not null,
    sign_in     text not null check (length(sign_in) between 1 and 100),
    name        text not null check (length(name) between 1 and 200),
    lead        boolean not null default false,
    created_at  timestamptz not null default now(),
    primary key (district_id, adult_id),
    constraint adult_sign_in_once unique (district_id, sign_in),
    constraint adult_of_school foreign key (district_id, school_id) references school
);
comment on table adult is 'Somebody who works with the children and signs in';
comment on column adult.district_id is 'District the row belongs to';
comment on column adult.adult_id is 'Made here';
comment on column adult.school_id is 'School the adult works at';
comment on column adult.sign_in is 'Name used to sign in and named as observer in files';
comment on column adult.name is 'Shown beside looks and decisions';
comment on column adult.lead is 'True for a school lead, who sees every class of the school';
comment on column adult.created_at is 'When the row was written';
call guard('adult', false);

-- Not by district: sign-in has to find the district first. Holds no child and no secret.
create table sign_in (
    name        text primary key check (name = lower(name)),
    district_id int not null,
    adult_id    uuid not null,
    constraint sign_in_of_adult foreign key (district_id, adult_id) references adult
);
comment on table sign_in is 'Directory from a sign-in name to district and adult; the one table read before anybody is signed in';
comment on column sign_in.name is 'Sign-in name in lower case, unique on this server';
comment on column sign_in.district_id is 'District of the adult';
comment on column sign_in.adult_id is 'The adult';
grant select, insert on sign_in to ${app_role};
grant select, delete on sign_in to ${eraser_role};

create table credential (
    district_id   int not null references district,
    credential_id uuid not null default gen_random_uuid(),
    adult_id      uuid not null,
    password_hash text not null,
    one_time      boolean not null default false,
    expires_at    timestamptz,
    created_at    timestamptz not null default clock_timestamp(),
    primary key (district_id, credential_id),
    constraint credential_of_adult foreign key (district_id, adult_id) references adult
);
create index credential_newest on credential (district_id, adult_id, created_at desc);
comment on table credential is 'Password hashes; the newest row of an adult is the one that holds';
comment on column credential.district_id is 'District the row belongs to';
comment on column credential.credential_id is 'Made here';
comment on column credential.adult_id is 'Whose it is';
comment on column credential.password_hash is 'Encoded with its scheme in front; never the password';
comment on column credential.one_time is 'True for an invitation or a reset: good for choosing an own password only';
comment on column credential.expires_at is 'One-time passwords end; null = does not end';
comment on column credential.created_at is 'When it was set';
call guard('credential', false);

create table classroom (
    district_id int not null references district,
    class_id    uuid not null default gen_random_uuid(),
    school_id   uuid not null,
    name        text not null check (length(name) between 1 and 100),
    grade       text not null default '1',
    created_at  timestamptz not null default now(),
    primary key (district_id, class_id),
    constraint classroom_name_once unique (district_id, school_id, name),
    constraint classroom_of_school foreign key (district_id, school_id) references school
);
comment on table classroom is 'A class of children';
comment on column classroom.district_id is 'District the row belongs to';
comment on column classroom.class_id is 'Made here';
comment on column classroom.school_id is 'School the class is in';
comment on column classroom.name is 'As the school calls it, such as Room 6';
comment on column classroom.grade is 'Grade as the school writes it';
comment on column classroom.created_at is 'When the row was written';
call guard('classroom', false);

create table class_adult (
    district_id int not null references district,
    class_id    uuid not null,
    adult_id    uuid not null,
    role        text not null check (role in ('teacher', 'co_teacher', 'aide', 'specialist')),
    starts_on   date not null,
    ends_on     date,
    primary key (district_id, class_id, adult_id, starts_on),
    constraint class_adult_of_class foreign key (district_id, class_id) references classroom,
    constraint class_adult_of_adult foreign key (district_id, adult_id) references adult,
    constraint class_adult_dates_in_order check (ends_on is null or ends_on >= starts_on)
);
comment on table class_adult is 'Which adult works in which class, as what, and when; a specialist here has no reach of its own, grants give it';
comment on column class_adult.district_id is 'District the row belongs to';
comment on column class_adult.class_id is 'The class';
comment on column class_adult.adult_id is 'The adult';
comment on column class_adult.role is 'teacher, co_teacher, aide or specialist';
comment on column class_adult.starts_on is 'First day';
comment on column class_adult.ends_on is 'Last day; null = goes on';
call guard('class_adult', false);
grant update (ends_on) on class_adult to ${app_role};
