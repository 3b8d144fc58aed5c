use crate::job::job;

#[test]
fn a_line_is_printed_with_its_rule_and_inputs() {
    let job = job();
    assert_eq!(
        job.working.line(job.outside.line).to_string(),
        "\
mat.1.outside.width = 12 1/2 in (317.5 mm)
  rule     a mat is as wide as its window and both borders [geometry]
  formula  outside = window + left + right
  with     window = 8 in      from mat.1.opening.2.window.width
           left   = 2 in      from the job
           right  = 2 1/2 in  from the job"
    );
}

#[test]
fn an_explanation_is_printed_further_in_at_each_step() {
    let job = job();
    assert_eq!(
        job.working.explain(job.fits.line).to_string(),
        "\
package.fits = yes
  rule     the blank comes out of one sheet [geometry]
  formula  fits = blank ≤ sheet and outside ≤ sheet
  with     blank   = 12 5/8 in  from package.blank.width
           outside = 12 1/2 in  from mat.1.outside.width
           sheet   = 32 in      from the material
  package.blank.width = 12 5/8 in (320.675 mm)
    rule     the blank is cut clear of the rabbet [published]
    source   T-1, A made-up book of clearances, Nobody, 1901 (read in part)
    formula  blank = outside + clearance
    with     outside   = 12 1/2 in  from mat.1.outside.width
             clearance = 1/8 in     from the setting blank.clearance
    mat.1.outside.width = 12 1/2 in (317.5 mm)
      rule     a mat is as wide as its window and both borders [geometry]
      formula  outside = window + left + right
      with     window = 8 in      from mat.1.opening.2.window.width
               left   = 2 in      from the job
               right  = 2 1/2 in  from the job
      mat.1.opening.2.window.width = 8 in (203.2 mm)
        rule     the window hides an overlap on both sides of the art [common practice]
        source   common practice, no source
        formula  window = art − 2 × overlap
        with     art     = 8 1/2 in  from the job
                 overlap = 1/4 in    from the setting window.overlap"
    );
}
