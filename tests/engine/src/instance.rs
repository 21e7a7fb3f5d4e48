//! A published instance, as its file gives it.

/// Durations, demands, links and capacities; the activities are counted from 0, the last is the end of all.
pub struct Instance {
    pub durations: Vec<i32>,
    /// What each activity takes of each resource.
    pub demands: Vec<Vec<i32>>,
    /// What follows each activity.
    pub followers: Vec<Vec<usize>>,
    pub capacity: Vec<i32>,
    /// Length of the critical path.
    pub path: i32,
}

impl Instance {
    /// Reads a file of the library; none where it is not one.
    pub fn read(text: &str) -> Option<Instance> {
        let lines: Vec<Vec<&str>> = text.lines().map(|line| line.split_whitespace().collect()).collect();
        let links = numbers_after(&lines, "jobnr. #modes", 1)?;
        let wants = numbers_after(&lines, "jobnr. mode", 2)?;
        let path = numbers_after(&lines, "pronr.", 1)?;
        Some(Instance {
            durations: wants.iter().map(|row| row.get(2).copied()).collect::<Option<_>>()?,
            demands: wants.iter().map(|row| row.get(3..).map(<[i32]>::to_vec)).collect::<Option<_>>()?,
            followers: links
                .iter()
                .map(|row| Some(row.get(3..)?.iter().map(|job| *job as usize - 1).collect()))
                .collect::<Option<_>>()?,
            capacity: numbers_after(&lines, "RESOURCEAVAILABILITIES", 2)?.first()?.clone(),
            path: *path.first()?.last()?,
        })
    }
}

/// The lines of numbers that begin so many lines after a heading.
fn numbers_after(lines: &[Vec<&str>], head: &str, skip: usize) -> Option<Vec<Vec<i32>>> {
    let begin = lines.iter().position(|line| line.join(" ").starts_with(head))? + skip;
    let numbers = |line: &Vec<&str>| line.iter().map(|word| word.parse().ok()).collect::<Option<Vec<i32>>>();
    Some(lines.get(begin..)?.iter().map_while(numbers).take_while(|row| !row.is_empty()).collect())
}
