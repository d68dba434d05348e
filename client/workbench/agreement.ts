/** The scheme under which the editor sees the opened folder. */
export const folderScheme = 'battledore-folder';

/** The header in which the workbench proves that a request for a file of the folder comes from its own page. */
export const keyHeader = 'x-battledore-key';
