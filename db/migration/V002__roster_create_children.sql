-- The children, and in which class each one is when.

create table child (
    district_id int not null references district,
    child_id    uuid not null default gen_random_uuid(),
    school_key  text not null check (length(school_key) between 1 and 100),
    given_name  text not null check (length(given_name) between 1 and 100),
    family_name text not null default '' check (length(family_name) <= 100),
    grade       text not null default '1',
    created_at  timestamptz not null default now(),
    primary key (district_id, child_id),
    constraint child_key_once unique (district_id, school_key)
);
comment on table child is 'A child, with no more about it than the table needs; no birth date, no address, no diagnosis';
comment on column child.district_id is 'District the row belongs to';
comment on column child.child_id is 'Made here';
comment on column child.school_key is 'The school''s own id, unique in the district; what files and HTTP call child';
comment on column child.given_name is 'Name used at the table';
comment on column child.family_name is 'May be empty';
comment on column child.grade is 'Grade as the school writes it';
comment on column child.created_at is 'When the row was written';

create table enrolment (
    district_id int not null references district,
    class_id    uuid not null,
    child_id    uuid not null,
    starts_on   date not null,
    ends_on     date,
    primary key (district_id, class_id, child_id, starts_on),
    constraint enrolment_of_class foreign key (district_id, class_id) references classroom,
    constraint enrolment_of_child foreign key (district_id, child_id) references child,
    constraint enrolment_dates_in_order check (ends_on is null or ends_on >= starts_on)
);
create index enrolment_by_child on enrolment (district_id, child_id);
comment on table enrolment is 'From when to when a child is in a class';
comment on column enrolment.district_id is 'District the row belongs to';
comment on column enrolment.class_id is 'The class';
comment on column enrolment.child_id is 'The child';
comment on column enrolment.starts_on is 'First day in the class';
comment on column enrolment.ends_on is 'Last day in the class; null = goes on';

create table caseload_grant (
    district_id int not null references district,
    grant_id    uuid not null default gen_random_uuid(),
    adult_id    uuid not null,
    child_id    uuid not null,
    reason      text not null check (length(reason) between 1 and 500),
    starts_on   date not null,
    ends_on     date not null,
    granted_by  uuid,
    created_at  timestamptz not null default now(),
    primary key (district_id, grant_id),
    constraint caseload_grant_of_adult foreign key (district_id, adult_id) references adult,
    constraint caseload_grant_of_child foreign key (district_id, child_id) references child,
    constraint caseload_grant_dates_in_order check (ends_on >= starts_on)
);
create index caseload_grant_by_adult on caseload_grant (district_id, adult_id);
comment on table caseload_grant is 'Which child a specialist may see, why, until when';
comment on column caseload_grant.district_id is 'District the row belongs to';
comment on column caseload_grant.grant_id is 'Made here';
comment on column caseload_grant.adult_id is 'Who may see';
comment on column caseload_grant.child_id is 'Which child';
comment on column caseload_grant.reason is 'The legitimate interest, in words';
comment on column caseload_grant.starts_on is 'First day';
comment on column caseload_grant.ends_on is 'Last day; access ends by itself';
comment on column caseload_grant.granted_by is 'Adult who shared; null for the sample';
comment on column caseload_grant.created_at is 'When the row was written';

call guard('child', false);
grant update (given_name, family_name, grade) on child to ${app_role};
call guard('enrolment', false);
grant update (ends_on) on enrolment to ${app_role};
call guard('caseload_grant', false);
grant update (ends_on) on caseload_grant to ${app_role};
