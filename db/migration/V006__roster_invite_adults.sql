-- Adults are let in by codes of one use, access to a class ends at once, and open sessions end with it.

create table invitation (
    district_id   int not null references district,
    invitation_id uuid not null default gen_random_uuid(),
    school_id     uuid not null,
    class_id      uuid,
    role          text not null check (role in ('teacher', 'co_teacher', 'aide', 'specialist', 'lead')),
    for_name      text not null check (length(for_name) between 1 and 200),
    code_hash     text not null check (length(code_hash) = 64),
    invited_by    uuid not null,
    created_at    timestamptz not null default clock_timestamp(),
    expires_at    timestamptz not null,
    used_at       timestamptz,
    used_by       uuid,
    revoked_at    timestamptz,
    revoked_by    uuid,
    primary key (district_id, invitation_id),
    constraint invitation_code_once unique (district_id, code_hash),
    constraint invitation_to_school foreign key (district_id, school_id) references school,
    constraint invitation_to_class foreign key (district_id, class_id) references classroom,
    constraint invitation_from_adult foreign key (district_id, invited_by) references adult,
    constraint invitation_used_by_adult foreign key (district_id, used_by) references adult,
    constraint invitation_revoked_by_adult foreign key (district_id, revoked_by) references adult,
    constraint invitation_lead_has_no_class check ((role = 'lead') = (class_id is null)),
    constraint invitation_one_end check (used_at is null or revoked_at is null)
);
create index invitation_of_class on invitation (district_id, class_id);
comment on table invitation is 'A code that lets one adult make an account, once, until a day';
comment on column invitation.district_id is 'District the row belongs to';
comment on column invitation.invitation_id is 'Made here';
comment on column invitation.school_id is 'School the adult will work at';
comment on column invitation.class_id is 'Class the adult will work in; null for a lead alone';
comment on column invitation.role is 'teacher, co_teacher, aide, specialist or lead';
comment on column invitation.for_name is 'For whom it was meant, as the inviter wrote it; offered as the name beside looks';
comment on column invitation.code_hash is 'SHA-256 of the code in hex; the code itself is shown once and kept nowhere';
comment on column invitation.invited_by is 'Adult who invited';
comment on column invitation.created_at is 'When';
comment on column invitation.expires_at is 'From then on the code opens nothing';
comment on column invitation.used_at is 'When an account was made by it; null = not yet';
comment on column invitation.used_by is 'The account made by it';
comment on column invitation.revoked_at is 'When it was taken back; null = it was not';
comment on column invitation.revoked_by is 'Who took it back';
call guard('invitation', false);
grant update (used_at, used_by, revoked_at, revoked_by) on invitation to ${app_role};

alter table class_adult add column ended_at timestamptz;
comment on column class_adult.ended_at is 'Set when access was ended by somebody: over from that moment, though the day still counts for looks made before';
grant update (ended_at, role) on class_adult to ${app_role};

alter table caseload_grant add column ended_at timestamptz;
comment on column caseload_grant.ended_at is 'Set when the sharing was ended by somebody before its last day: over from that moment';
grant update (ended_at) on caseload_grant to ${app_role};

create table session_end (
    district_id int not null references district,
    end_id      uuid not null default gen_random_uuid(),
    adult_id    uuid not null,
    reason      text not null check (reason in ('access_ended')),
    ended_at    timestamptz not null default clock_timestamp(),
    primary key (district_id, end_id),
    constraint session_end_of_adult foreign key (district_id, adult_id) references adult
);
create index session_end_newest on session_end (district_id, adult_id, ended_at desc);
comment on table session_end is 'Sessions of an adult begun before such a row are over; a new password ends them too, without one';
comment on column session_end.district_id is 'District the row belongs to';
comment on column session_end.end_id is 'Made here';
comment on column session_end.adult_id is 'Whose sessions';
comment on column session_end.reason is 'access_ended';
comment on column session_end.ended_at is 'From when';
call guard('session_end', true);
