-- For whom a transaction works is proved, not said: the run-time user may set any number, but not the proof over it.

create schema stepwell_proof;
comment on schema stepwell_proof is 'What proofs are made with; nobody but the owner enters';
revoke all on schema stepwell_proof from public;

create table stepwell_proof.key (
    only_one boolean primary key default true check (only_one),
    outer_key bytea not null check (length(outer_key) = 64),
    inner_key bytea not null check (length(inner_key) = 64)
);
comment on table stepwell_proof.key is 'Two random keys of one block of SHA-256; the program reads them as the owner, the run-time user cannot';
comment on column stepwell_proof.key.only_one is 'Holds the table to one row';
comment on column stepwell_proof.key.outer_key is 'Key of the outer digest';
comment on column stepwell_proof.key.inner_key is 'Key of the inner digest';
-- Each UUID brings 122 bits of PostgreSQL's strong random source.
insert into stepwell_proof.key (outer_key, inner_key)
select sha256(convert_to(gen_random_uuid()::text || gen_random_uuid() || gen_random_uuid(), 'UTF8'))
           || sha256(convert_to(gen_random_uuid()::text || gen_random_uuid() || gen_random_uuid(), 'UTF8')),
       sha256(convert_to(gen_random_uuid()::text || gen_random_uuid() || gen_random_uuid(), 'UTF8'))
           || sha256(convert_to(gen_random_uuid()::text || gen_random_uuid() || gen_random_uuid(), 'UTF8'));

create function proved() returns text
    language sql stable parallel safe security definer set search_path = pg_catalog, pg_temp
    return (select current_setting('stepwell.for', true) from stepwell_proof.key k
        where current_setting('stepwell.proof', true) = encode(sha256(k.outer_key || sha256(k.inner_key
            || convert_to(current_setting('stepwell.for', true), 'UTF8'))), 'hex'));
comment on function proved() is 'District and, after a slash, adult of the running transaction when its proof holds; null otherwise';

create or replace function current_district() returns int
    language sql stable parallel safe
    return nullif(split_part(proved(), '/', 1), '')::int;
comment on function current_district() is 'District of the running transaction; null when none was proved, and then no row is visible';

create function current_adult() returns uuid
    language sql stable parallel safe
    return nullif(split_part(proved(), '/', 2), '')::uuid;
comment on function current_adult() is 'Adult of the running transaction; null for work that no adult does, such as signing in';

-- As a sub-select the proof is looked at once a statement, not once a row.
do $$
declare t regclass;
begin
    for t in select polrelid::regclass from pg_policy where polname = 'of_district' loop
        execute format('alter policy of_district on %s using (district_id = (select current_district()))
            with check (district_id = (select current_district()))', t);
    end loop;
end $$;

create or replace procedure guard(t regclass, facts boolean) language plpgsql as $$
begin
    execute format('alter table %s enable row level security', t);
    execute format('alter table %s force row level security', t);
    execute format('create policy of_district on %s for all to ${app_role}
        using (district_id = (select current_district())) with check (district_id = (select current_district()))', t);
    execute format('create policy of_eraser on %s for all to ${eraser_role} using (true)', t);
    execute format('grant select, insert on %s to ${app_role}', t);
    execute format('grant select, delete on %s to ${eraser_role}', t);
    if facts then
        execute format('create trigger kept_as_written before update or delete on %s
            for each row execute function refuse_change()', t);
    end if;
end $$;
