//! Programs beside ours: the independent checker and the research solver, both in Python.

use std::env;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use cutting::Problem;
use cutting::{Goal, lengths, sheets};
use serde::Deserialize;
use serde_json::{Value, json};

use crate::breach::Trouble;

/// What the research solver is asked through.
const SCRIPT: &str = include_str!("reference.py");

/// Added to the time the research solver is given, before it is ended.
const GRACE: Duration = Duration::from_secs(30);

/// The research solver, where it is installed.
pub struct Reference {
    python: PathBuf,
    /// Its version, in its own words.
    pub version: String,
}

/// What it answers for one instance.
#[derive(Debug, Default, Deserialize)]
pub struct Answer {
    /// Its objective; `None` without a full plan.
    pub value: Option<u64>,
    /// Its bound.
    pub bound: Option<u64>,
    /// Seconds to its first full plan.
    pub first: Option<f64>,
    /// Seconds in all.
    pub seconds: Option<f64>,
    /// Whether plan and bound meet.
    #[serde(default)]
    pub proved: bool,
    /// What went wrong.
    pub error: Option<String>,
}

impl Answer {
    fn failed(error: String) -> Self {
        Self {
            error: Some(error),
            ..Self::default()
        }
    }
}

impl Reference {
    /// The first Python that knows it.
    pub fn find() -> Option<Self> {
        let version = "import packingsolver; print(packingsolver.__version__)";
        pythons().into_iter().find_map(|python| {
            let answer = Command::new(&python).args(["-c", version]).output().ok()?;
            let said = String::from_utf8(answer.stdout).ok()?;
            answer.status.success().then(|| Self {
                python,
                version: said.trim().to_owned(),
            })
        })
    }

    /// Has it solve one instance on one core.
    pub fn ask(&self, problem: &Problem, limit: Duration, core: u16) -> Answer {
        let question = json!({
            "problem": question(problem),
            "seconds": limit.as_secs_f64(),
            "core": core,
        });
        let said = self.say(&question, limit);
        match said {
            Ok(said) => serde_json::from_str(&said)
                .unwrap_or_else(|fault| Answer::failed(format!("no answer: {fault}"))),
            Err(fault) => Answer::failed(fault.to_string()),
        }
    }

    fn say(&self, question: &Value, limit: Duration) -> io::Result<String> {
        let mut child = Command::new(&self.python)
            .args(["-c", SCRIPT])
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()?;
        if let Some(mut input) = child.stdin.take() {
            input.write_all(question.to_string().as_bytes())?;
        }
        let patience = limit.saturating_mul(2).saturating_add(GRACE);
        if !ends_within(&mut child, patience)? {
            child.kill()?;
            child.wait()?;
            return Err(io::Error::other("it did not keep to its time"));
        }
        let mut said = String::new();
        if let Some(mut output) = child.stdout.take() {
            output.read_to_string(&mut said)?;
        }
        Ok(said)
    }
}

/// Waits for a program; its answer is one short line, which a pipe holds.
fn ends_within(child: &mut Child, patience: Duration) -> io::Result<bool> {
    let start = Instant::now();
    while child.try_wait()?.is_none() {
        if start.elapsed() > patience {
            return Ok(false);
        }
        thread::sleep(Duration::from_millis(10));
    }
    Ok(true)
}

/// Where Python may be, in the order of trying.
fn pythons() -> Vec<PathBuf> {
    let named = ["PACKING_PYTHON", "REFERENCE_PYTHON"];
    let named = named.into_iter().filter_map(env::var_os).map(PathBuf::from);
    named
        .chain(["python3.12", "python3"].map(PathBuf::from))
        .collect()
}

/// What the independent checker says of all plans.
pub struct Verdicts {
    /// How many it judged.
    pub given: usize,
    /// Its words for each one it refuses.
    pub refused: Vec<String>,
}

/// Has the checker look at all plans.
pub fn verdicts(script: &Path, set: &Path, plans: &Path) -> Result<Verdicts, Trouble> {
    let starts = |python: &PathBuf| {
        let tried = Command::new(python).args(["-c", ""]).output();
        tried.is_ok_and(|answer| answer.status.success())
    };
    let python = pythons().into_iter().find(starts);
    let answer = Command::new(python.unwrap_or_else(|| PathBuf::from("python3")))
        .arg(script)
        .args([set, plans])
        .arg("--json")
        .output()
        .map_err(|source| Trouble::Start {
            program: "python3",
            source,
        })?;
    if !matches!(answer.status.code(), Some(0 | 1)) {
        let said = String::from_utf8_lossy(&[answer.stdout, answer.stderr].concat()).into_owned();
        return Err(Trouble::Failed {
            program: "check_plan.py",
            said: said.trim().to_owned(),
        });
    }
    let mut refused = Vec::new();
    let mut given = 0;
    for line in String::from_utf8_lossy(&answer.stdout).lines() {
        let verdict: Value = serde_json::from_str(line).map_err(|source| Trouble::Failed {
            program: "check_plan.py",
            said: format!("{line}: {source}"),
        })?;
        given += 1;
        if verdict["valid"] != true {
            let text = |field: &str| verdict[field].as_str().unwrap_or("?").to_owned();
            refused.push(format!("{}: {}", text("instance"), text("why")));
        }
    }
    Ok(Verdicts { given, refused })
}

/// The problem in the words of the script.
fn question(problem: &Problem) -> Value {
    match problem {
        Problem::Lengths(problem) => of_sticks(problem),
        Problem::Sheets(problem) => of_sheets(problem),
    }
}

fn goal(goal: Goal) -> &'static str {
    match goal {
        Goal::Fewest => "bins",
        Goal::Cost => "cost",
        Goal::Value => "value",
    }
}

fn of_sticks(problem: &lengths::Problem) -> Value {
    let stock: Vec<Value> = problem
        .stock
        .iter()
        .map(|stick| {
            json!({
                "l": stick.length, "cost": stick.cost, "count": stick.count,
                "trim": [stick.trim.0, stick.trim.1],
            })
        })
        .collect();
    let pieces: Vec<Value> = problem
        .pieces
        .iter()
        .map(|piece| json!({"l": piece.length, "count": piece.count, "value": piece.value}))
        .collect();
    json!({
        "dim": 1, "goal": goal(problem.goal), "kerf": problem.kerf,
        "stock": stock, "pieces": pieces,
    })
}

/// Windows are left out: the research solver knows none.
fn of_sheets(problem: &sheets::Problem) -> Value {
    let stock: Vec<Value> = problem
        .stock
        .iter()
        .map(|sheet| {
            let trim = sheet.trim;
            json!({
                "w": sheet.width, "h": sheet.height, "cost": sheet.cost, "count": sheet.count,
                "trim": [trim.left, trim.right, trim.bottom, trim.top],
            })
        })
        .collect();
    let pieces: Vec<Value> = problem
        .pieces
        .iter()
        .map(|piece| {
            json!({
                "w": piece.width, "h": piece.height, "count": piece.count, "value": piece.value,
                "turn": piece.turn,
            })
        })
        .collect();
    let rules = problem.rules;
    let first = match rules.first {
        sheets::First::Any => "any",
        sheets::First::Upright => "v",
        sheets::First::Level => "h",
    };
    json!({
        "dim": 2, "goal": goal(problem.goal), "kerf": rules.kerf, "stages": rules.stages,
        "first": first, "final_trim": rules.final_trim, "least_strip": rules.least_strip,
        "stock": stock, "pieces": pieces,
    })
}
