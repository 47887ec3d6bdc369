-- The second wall by reach: what the application forgets to ask, the database still does not show.

create function reach() returns setof uuid language sql stable as $$
    select e.child_id from enrolment e join class_adult a using (district_id, class_id)
    where a.adult_id = (select current_adult()) and a.role <> 'specialist'
    union
    select e.child_id from adult a join classroom c using (district_id, school_id)
        join enrolment e using (district_id, class_id)
    where a.adult_id = (select current_adult()) and a.lead
    union
    select g.child_id from caseload_grant g where g.adult_id = (select current_adult())
$$;
comment on function reach() is 'Children who are or were in a class or school of the transaction''s adult, or shared with that adult; which day counts is the application''s to say';

create procedure guard_reach(t regclass) language plpgsql as $$
begin
    execute format('create policy of_reach on %s as restrictive for all to ${app_role}
        using ((select current_adult()) is null or child_id in (select reach()))
        with check ((select current_adult()) is null or child_id in (select reach()))', t);
end $$;
comment on procedure guard_reach(regclass) is 'Puts security by reach on a table with a child, beside that by district';

call guard_reach('observation');
call guard_reach('tier_decision');
call guard_reach('concern');
call guard_reach('dose');
call guard_reach('plan');
call guard_reach('home_note');
call guard_reach('check_mark');
call guard_reach('check_look');
call guard_reach('check_sitting');
call guard_reach('review_choice');
call guard_reach('help_letter');
call guard_reach('family_talk');
