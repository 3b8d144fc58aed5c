//! The command as people and scripts meet it: exit code, stdout and stderr together.

mod bench;
mod reference;

mod bad_input;
mod completions;
mod cut_jobs;
mod cut_list;
mod cut_stop;
mod demo_write;
mod help;
mod job_check;
mod job_convert;
mod job_draw;
mod job_largest_art;
mod job_new;
mod job_schema;
mod job_sizes;
mod job_ticket;
mod length_read;
mod material_list;
mod material_show;
mod serve;
mod setting_list;
mod setting_show;
mod usage;
