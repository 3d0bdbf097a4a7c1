/** A reader that has seen enough, such as "head", closes the pipe: that ends the program and is no fault of anyone. */
export function endWhenSeenEnough(): void {
  process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'EPIPE') throw fault;
    process.exit();
  });
}
